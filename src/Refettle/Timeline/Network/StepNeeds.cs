using Refettle.Access;
using Refettle.Access.Fire;

namespace Refettle.Timeline.Network;

/// <summary>What a step asks of the car by its description, whatever holds already.</summary>
internal static class StepNeeds
{
    /// <summary>Facts that must hold, stances left out.</summary>
    public static IEnumerable<Fact> Facts(CarStanding standing, Step step) =>
        All(standing, step).Where(fact => !standing.IsStance(fact)).Distinct();

    /// <summary>The stance that it must be done in; null when any will do, and for changes of stance.</summary>
    public static string? Stance(CarStanding standing, Step step) => standing.IsStance(step.Fact) ? null
        : All(standing, step).Where(fact => standing.IsStance(fact)).Select(fact => fact.Subject).FirstOrDefault();

    private static IEnumerable<Fact> All(CarStanding standing, Step step) => step.Fact.Kind switch
    {
        FactKind.Open => OfJoint(standing, standing.Joints[step.Fact.Subject], step.Way),
        FactKind.State => standing.States[step.Fact.Subject].Ways.Where(way => way.Id == step.Way).SelectMany(way => way.Clear),
        FactKind.Free => standing.JointsOf(step.Fact.Subject).Select(joint => Fact.Open(joint.Id)).Prepend(Fact.Off(step.Fact.Subject)),
        FactKind.Reach => standing.Spaces[step.Fact.Subject].ClosedBy.Select(Fact.Off),
        _ => OfUnit(standing, step),
    };

    private static IEnumerable<Fact> OfJoint(CarStanding standing, Joint joint, string name) =>
        joint.Ways.FirstOrDefault(way => way.Id == name) is not { } way ? []
        : [.. way.Clear, .. way.Where == WorkPlace.OnBench ? joint.Holds.Select(Fact.Off) : [],
            .. FireNeeds.Of(standing, joint, way) ?? []];

    private static IEnumerable<Fact> OfUnit(CarStanding standing, Step step)
    {
        const string with = "with ";
        if (step.Way.StartsWith(with, StringComparison.Ordinal))
            return [Fact.Off(step.Way[with.Length..])];
        return standing.Parts.TryGetValue(step.Fact.Subject, out var part)
            ? standing.JointsOf(part.Id).Select(joint => Fact.Open(joint.Id)).Concat(part.Out.Clear)
            : standing.SubAssemblies[step.Fact.Subject] is var unit
            ? standing.OuterJointsOf(unit).Select(joint => Fact.Open(joint.Id)).Concat(unit.Out.Clear)
            : [];
    }
}
