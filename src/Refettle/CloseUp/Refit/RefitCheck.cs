using Refettle.Timeline.Network;

namespace Refettle.CloseUp.Refit;

/// <summary>Looks a refit sheet over from the car's description alone: everything that is apart is put back, once, and nothing is
/// fitted behind what is on already.</summary>
public static class RefitCheck
{
    private const string Report = "This is a fault of the program: please report it.";

    public static ValueList<Fault> Of(Car car, RefitSheet sheet)
    {
        var faults = new List<Fault>();
        var alone = sheet.Steps.Where(step => step.Fact.Kind == FactKind.Off).Select(step => step.Fact.Subject).ToHashSet();
        var (off, open, closed) = (Subjects(car, FactKind.Off), Subjects(car, FactKind.Open), new HashSet<string>());
        foreach (var (step, number) in sheet.Steps.Select((step, place) => (step, place + 1)))
        {
            if (step.Fact.Kind == FactKind.Off)
                faults.AddRange(Fit(car, step, number, off, alone));
            else if (step.Fact.Kind == FactKind.Open)
                faults.AddRange(Close(car, step.Fact.Subject, number, off, closed).Concat(Refit(car, step, number, off, closed)));
        }

        faults.AddRange(off.Order(StringComparer.Ordinal)
            .Select(part => new Fault($"part {part}", "it is off, and no step fits it", Report)));
        open.ExceptWith(closed);
        faults.AddRange(open.Order(StringComparer.Ordinal)
            .Select(joint => new Fault($"joint {joint}", "it is open, and no step closes it", Report)));
        return faults.Count > 0 && StepsDone.Of(new(car)).Odd.Faults() is { Count: > 0 } odd ? odd : faults.ToValueList();
    }

    /// <summary>Whether the sheet says itself that what its way back asks for does not hold.</summary>
    private static bool IsSaid(RefitStep step) =>
        step.Cautions.Any(caution => caution.StartsWith(RefitGate.NotYet, StringComparison.Ordinal));

    /// <summary>What a joint's way back asks for is still off, or still open.</summary>
    private static IEnumerable<Fault> Refit(Car car, RefitStep step, int number, HashSet<string> off, HashSet<string> closed) =>
        (IsSaid(step) ? null : car.Structure.Joints.First(joint => joint.Id == step.Fact.Subject).Refit)?.Clear
            .Where(need => (need.Kind == FactKind.Off && car.Structure.Parts.Any(part => part.Id == need.Subject)
                && !off.Contains(need.Subject))
                || (need.Kind == FactKind.Open && closed.Contains(need.Subject)))
            .Select(need => new Fault($"step {number}", $"{step.Fact.Subject} is closed by its way back while {need} does not hold",
                Report)) ?? [];

    private static HashSet<string> Subjects(Car car, FactKind kind)
    {
        var known = kind == FactKind.Off
            ? car.Structure.Parts.Select(part => part.Id).ToHashSet()
            : car.Structure.Joints.Select(joint => joint.Id).ToHashSet();
        return [.. car.Done.Where(fact => fact.Kind == kind && known.Contains(fact.Subject)).Select(fact => fact.Subject)];
    }

    /// <summary>A part goes on while what has to be off for its way out is off; a member that came off before its
    /// sub-assembly goes on by itself.</summary>
    private static IEnumerable<Fault> Fit(Car car, RefitStep step, int number, HashSet<string> off, HashSet<string> alone)
    {
        var unit = step.Fact.Subject;
        var members = car.Structure.SubAssemblies.FirstOrDefault(group => group.Id == unit)?.Members ?? [unit];
        var way = car.Structure.SubAssemblies.FirstOrDefault(group => group.Id == unit)?.Out
            ?? car.Structure.Parts.First(part => part.Id == unit).Out;
        var before = off.Count;
        foreach (var blocker in (IsSaid(step) ? [] : way.Refit?.Clear ?? way.Clear)
            .Where(need => need.Kind == FactKind.Off && car.Structure.Parts.Any(part => part.Id == need.Subject)
                && !off.Contains(need.Subject)))
            yield return new($"step {number}", $"{unit} is fitted behind {blocker.Subject}, which is on already", Report);
        off.ExceptWith(members.Where(member => member == unit || !alone.Contains(member)));
        if (off.Count == before)
            yield return new($"step {number}", $"{unit} is on already", Report);
    }

    /// <summary>A joint is closed once, between parts that are all off, on the bench, or all on.</summary>
    private static IEnumerable<Fault> Close(Car car, string id, int number, HashSet<string> off, HashSet<string> closed)
    {
        var joint = car.Structure.Joints.First(known => known.Id == id);
        if (!closed.Add(id))
            yield return new($"step {number}", $"{id} is closed twice", Report);
        if (joint.Holds.Any(off.Contains) && !joint.Holds.All(off.Contains))
            yield return new($"step {number}", $"{id} is closed between a part that is on and one that is off", Report);
    }
}
