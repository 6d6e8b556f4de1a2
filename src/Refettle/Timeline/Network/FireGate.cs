using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Timeline.Network;

/// <summary>Puts tries with flame, sparks or cutting behind all that opens their gate.</summary>
internal static class FireGate
{
    /// <summary>States in which airbags and brake fluid no longer close a gate.</summary>
    public static readonly string[] MadeSafe = ["airbags-safe", "brakes-drained"];

    /// <summary>Links a task behind what takes fuel, brake fluid and airbags away, as far as the plan does so.</summary>
    /// <returns>Tries whose gate stays closed all the same: then no link is left. Empty when all may be made.</returns>
    public static ValueList<ClosedTry> Link(
        NetworkDraft draft, CarStanding standing, StripTasks strip, Joint joint, ValueList<Rung> rungs, string task)
    {
        var added = Safeguards(standing, strip).Where(before => before != task && draft.DirectlyBefore(task).All(known => known != before)
            && draft.TryLink(before, task, "away before flame, sparks or a cut")).ToList();
        var closed = Closed(Before(draft, standing, task), joint, rungs);
        if (closed.Count > 0)
            added.ForEach(before => draft.Unlink(before, task));
        return closed;
    }

    /// <summary>Tries whose gate is closed on a car; what they destroy and what must be shielded is
    /// seen to by tasks of their own.</summary>
    public static ValueList<ClosedTry> Closed(CarStanding standing, Joint joint, ValueList<Rung> rungs) => rungs
        .Select(rung => new ClosedTry(rung, Gate.Of(standing, joint, rung, new(rung.Destroys, [AtHand.All]))))
        .Where(gate => gate.Reasons.Count > 0).ToValueList();

    /// <summary>The tasks that take away what burns.</summary>
    public static IEnumerable<string> Safeguards(CarStanding standing, StripTasks strip) => strip.Made
        .Where(made => made.Chunk.Steps.Any(step => IsSafeguard(standing, step))).Select(made => made.Task).Distinct();

    /// <summary>The car as it is surely by the time a task starts: what comes before it is done.</summary>
    public static CarStanding Before(NetworkDraft draft, CarStanding standing, string task)
    {
        var facts = draft.Before(task).Select(id => draft[id]).Where(one => one.Kind is TaskKind.Strip or TaskKind.Try)
            .SelectMany(one => one.Steps).Select(step => step.Fact);
        return new(standing.Car with { Done = standing.Car.Done.Concat(facts).Distinct().ToValueList() });
    }

    /// <summary>Whether a step takes away, or makes safe, what burns.</summary>
    public static bool IsSafeguard(CarStanding standing, Step step) => step.Fact.Kind switch
    {
        FactKind.State => MadeSafe.Contains(step.Fact.Subject),
        FactKind.Off =>
            Parts(standing, step.Fact.Subject)
                .Any(part => part.Hazards.Any(hazard => hazard is Hazard.Fuel or Hazard.BrakeFluid or Hazard.Airbag)),
        _ => false,
    };

    private static IEnumerable<Part> Parts(CarStanding standing, string name) => standing.Parts.TryGetValue(name, out var part) ? [part]
        : standing.SubAssemblies.TryGetValue(name, out var unit) ? unit.Members.Select(member => standing.Parts[member]) : [];
}
