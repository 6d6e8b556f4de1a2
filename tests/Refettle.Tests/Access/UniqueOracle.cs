using System.Text.RegularExpressions;
using Refettle.Access;

namespace Refettle.Tests.Access;

/// <summary>Which unique parts a step of a plan touches or passes, worked out from the sheet and
/// the steps before it. It shares nothing with what attaches the warnings. That a unique part is to be warned of at each such
/// step is a rule of this program.</summary>
internal sealed class UniqueOracle(Car car)
{
    private readonly HashSet<string> _off = [];

    /// <summary>The names that are to be told at this step; then what it lifts is off.</summary>
    public ValueList<string> Next(Step step)
    {
        var names = step.Fact.Kind switch
        {
            FactKind.Open => OfOpening(car.Structure.Joints.Single(joint => joint.Id == step.Fact.Subject), step),
            FactKind.Off => OfLifting(Lifted(step.Fact.Subject)),
            _ => [],
        };
        if (step.Fact.Kind == FactKind.Off)
            _off.UnionWith(Lifted(step.Fact.Subject));
        return car.Structure.Parts.Where(part => part.Scarcity == Scarcity.Unique && names.Contains(part.Id)).Select(part => part.Name)
            .ToValueList();
    }

    /// <summary>The names that its cautions tell.</summary>
    public ValueList<string> Told(Step step) => car.Structure.Parts
        .Where(part => step.Cautions
            .Any(caution => caution.Contains("there is no other", StringComparison.Ordinal) && Regex.IsMatch(caution, $@"\b{part.Name}\b")))
            .Select(part => part.Name).ToValueList();

    private HashSet<string> OfOpening(Joint joint, Step step)
    {
        var touched = joint.Holds.Concat(step.Destroys).ToHashSet();
        if (joint.Ways.Single(way => way.Id == step.Way).Where == WorkPlace.OnBench)
            return touched;
        var zone = car.Structure.Parts.Single(part => part.Id == joint.Holds.First(name => !IsShell(name))).Zone;
        var near = car.Structure.Parts
            .Where(part => part.Zone == zone && !_off.Contains(part.Id)
                && touched.Any(other => !IsShell(other) && !_off.Contains(other) && AreJoined(other, part.Id)));
        return [.. touched, .. near.Select(part => part.Id)];
    }

    private HashSet<string> OfLifting(string[] lifted) =>
        [.. lifted, .. car.Structure.Parts.Select(part => part.Id)
            .Where(part => !_off.Contains(part) && lifted.Any(one => AreJoined(one, part)))];

    private string[] Lifted(string name) =>
        car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == name) is { } unit ? [.. unit.Members] : [name];

    private bool AreJoined(string one, string other) =>
        car.Structure.Joints.Any(joint => joint.Holds.Contains(one) && joint.Holds.Contains(other));

    private bool IsShell(string part) => car.Structure.Parts.Single(one => one.Id == part).Fixed;
}
