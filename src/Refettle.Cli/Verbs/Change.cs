using Refettle.Checks;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary>Changes of a car's description: checked with all of the car before they are recorded.</summary>
internal static class Change
{
    public static Reply Record(Desk desk, OpenCar open, string source, Structure changed, string sentence) =>
        Record(desk, open, [new(source, changed, [])], now => Stands.After(now, sentence));

    public static Reply Record(Desk desk, OpenCar open, IReadOnlyList<StructureAdded> additions, Func<OpenCar, Reply> answer)
    {
        var now = additions.Aggregate(open.Car.Structure, (structure, addition) => structure.With(addition.Added, [.. addition.Tied]));
        var faults = New(open.Car.Structure, now);
        if (faults.Any(fault => fault.Severity == Severity.Error))
            return Reply.Bad(faults);
        var reply = desk.Record(open, additions, answer);
        return reply with { Faults = [.. faults, .. reply.Faults] };
    }

    /// <summary>What is wrong after and was not before: a car that has a fault can still be worked on, and mended.</summary>
    private static List<Fault> New(Structure before, Structure after)
    {
        var found = StructureCheck.Of(after);
        return found.Count == 0 ? [] : [.. found.Except(StructureCheck.Of(before))];
    }
}
