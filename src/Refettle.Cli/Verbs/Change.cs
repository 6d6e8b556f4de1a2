using Refettle.Checks;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary>Changes of a car's description: checked with all of the car before they are recorded.</summary>
internal static class Change
{
    public static Reply Record(Desk desk, OpenCar open, string source, Structure changed, string sentence) =>
        Record(desk, open, [new(source, changed, [])], now => Stands.After(now, sentence));

    /// <summary>Several additions, each made to the car with those before it, are recorded as one entry: one command, one strike.</summary>
    public static Reply Record(Desk desk, OpenCar open, IReadOnlyList<StructureAdded> additions, Func<OpenCar, Reply> answer)
    {
        var whole = additions.Aggregate(Joined);
        var faults = New(open.Car.Structure, open.Car.Structure.With(whole.Added, [.. whole.Tied]));
        if (faults.Any(fault => fault.Severity == Severity.Error))
            return Reply.Bad(faults);
        var reply = desk.Record(open, [whole], answer);
        return reply with { Faults = [.. faults, .. reply.Faults] };
    }

    private static StructureAdded Joined(StructureAdded first, StructureAdded then) =>
        new($"{first.Source}, {then.Source}", first.Added.With(then.Added, [.. then.Tied]), first.Tied.Union(then.Tied).ToValueList());

    /// <summary>What is wrong after and was not before: a car that has a fault can still be worked on, and mended.</summary>
    private static List<Fault> New(Structure before, Structure after)
    {
        var found = StructureCheck.Of(after);
        return found.Count == 0 ? [] : [.. found.Except(StructureCheck.Of(before))];
    }
}
