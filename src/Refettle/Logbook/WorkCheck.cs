namespace Refettle.Logbook;

/// <summary>Whether a step that someone marks fits the car as it stands.</summary>
internal static class WorkCheck
{
    private const string Look = "Look at what the car has and how it stands.";

    public static IEnumerable<Fault> Done(Car car, StepDone step) =>
        Refused(car, step.Fact, work => work.Do)
            .Concat(Supported(car, step.Fact))
            .Concat(Way(car, step))
            .Concat(Took(step.Took))
            .Concat(IsTrue(car, step.Fact) ? [AlreadyTrue(step)] : StanceCheck.Done(car, step));

    public static IEnumerable<Fault> Reversed(Car car, StepReversed step) =>
        Refused(car, step.Fact, work => work.Reverse,
            step.Fact.Kind == FactKind.Open ? "Fit first what is off, and say so: refettle back 'off(PART)'." : Look)
            .Concat(Took(step.Took))
            .Concat(IsTrue(car, step.Fact) ? [] : [NotTrue(step)]);

    public static IEnumerable<Fault> Stance(Car car, string stance) =>
        Refused(car, Fact.State(stance), work => (fact, structure) => work.Take(fact.Subject, structure))
            .Concat(Supported(car, Fact.State(stance)))
            .Concat(StanceCheck.Taken(car, stance));

    /// <summary>Tries it on a copy: what the fold would refuse is refused here.</summary>
    private static IEnumerable<Fault> Refused(
        Car car, Fact fact, Func<WorkDone, Func<Fact, StructureBuilder, string?>> work, string mend = Look)
    {
        var structure = new StructureBuilder();
        structure.Add(car.Structure, []);
        if (work(WorkDone.From(car))(fact, structure) is not { } refusal)
            yield break;
        var names = Subjects(car.Structure, fact.Kind).ToList();
        yield return new(fact.ToString(), refusal, names.Contains(fact.Subject) ? mend : NearNames.Ask(fact.Subject, names, mend));
    }

    private static IEnumerable<string> Subjects(Structure structure, FactKind kind) => (kind switch
    {
        FactKind.Open => structure.Joints.Select(joint => joint.Id),
        FactKind.State => structure.States.Select(state => state.Id),
        FactKind.Reach => structure.Spaces.Select(space => space.Id),
        FactKind.Free => structure.Parts.Select(part => part.Id),
        _ => structure.Parts.Select(part => part.Id).Concat(structure.SubAssemblies.Select(group => group.Id)),
    });

    /// <summary>Nobody is led under a car that stands on weak or missing parts.</summary>
    private static IEnumerable<Fault> Supported(Car car, Fact fact)
    {
        var stance = car.Structure.States.FirstOrDefault(state => fact == Fact.State(state.Id) && state.IsStance);
        foreach (var part in stance?.Supports ?? [])
        {
            if (car.Unsound.Contains(part))
                yield return new($"stance {stance!.Id}", $"part {part} must carry the car and was found unsound",
                    "Support the car elsewhere, or mark the part sound once it is.");
            if (car.Done.Contains(Fact.Off(part)))
                yield return new($"stance {stance!.Id}", $"part {part} must carry the car and is off",
                    "Support the car elsewhere, or put the part back first.");
        }
    }

    private static IEnumerable<Fault> Way(Car car, StepDone step)
    {
        if (string.IsNullOrEmpty(step.Way) || step.Fact.Kind is not (FactKind.Open or FactKind.State))
            return [];
        var ways = step.Fact.Kind == FactKind.Open
            ? car.Structure.Joints.FirstOrDefault(joint => joint.Id == step.Fact.Subject)?.Ways
            : car.Structure.States.FirstOrDefault(state => state.Id == step.Fact.Subject)?.Ways;
        if (ways is null || ways.Any(way => way.Id == step.Way))
            return [];
        var known = ways.Select(way => way.Id).ToList();
        return [new(step.Fact.ToString(), $"it has no way {step.Way}",
            NearNames.Ask(step.Way, known, $"Its ways are {string.Join(", ", known)}."))];
    }

    private static IEnumerable<Fault> Took(Minutes? took)
    {
        if (took is { Value: < 0 or > Minutes.Max })
            yield return new("minutes", $"{took.Value.Value} min", $"Give 0 to {Minutes.Max} min.");
    }

    private static bool IsTrue(Car car, Fact fact) =>
        car.Done.Contains(fact) || (fact.Kind == FactKind.State && car.Stance == fact.Subject);

    private static Fault AlreadyTrue(StepDone step) =>
        new(step.Fact.ToString(), "it is done already",
            $"Marking it again does no harm{(step.Took is null ? "" : "; of its minutes those told first count")}.")
        { Severity = Severity.Note };

    private static Fault NotTrue(StepReversed step) =>
        new(step.Fact.ToString(), "it was not done",
            $"Taking it back changes nothing{(step.Took is null ? "" : ", and of its minutes those told first count")}.")
        { Severity = Severity.Note };
}
