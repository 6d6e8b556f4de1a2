namespace Refettle.Logbook;

/// <summary>What a mark says that does not go with how the car stands by the log. It is noted, never refused: the car is what it
/// is, and the log may lag behind.</summary>
internal static class StanceCheck
{
    /// <summary>A step that is done in another stance only, whichever way it is done.</summary>
    public static IEnumerable<Fault> Done(Car car, StepDone step)
    {
        var asked = Alternatives(car, step).Select(clear => clear.Where(fact => IsStance(car, fact)).ToList()).ToList();
        if (car.Stance is null || asked.Count == 0 || asked.Any(stances => stances.All(stance => stance.Subject == car.Stance)))
            yield break;
        var needed = asked[0][0].Subject;
        yield return new(step.Fact.ToString(),
            $"it is done {Name(car, needed)}, and by the log the car stands otherwise: {Name(car, car.Stance)}",
            $"If the car stood so, say it too: refettle stance {needed}. Else look how it really stands before you go under it.")
        { Severity = Severity.Note };
    }

    /// <summary>On wheels of which one is off.</summary>
    public static IEnumerable<Fault> Taken(Car car, string stance)
    {
        if (stance is not (Car.OnWheels or Car.AtRideHeight))
            yield break;
        foreach (var wheel in car.Structure.Parts.Where(part => part.Roles.Contains(Part.Wheel) && IsOff(car, part.Id)))
            yield return new($"stance {stance}", $"by the log {wheel.Name} is off",
                $"If it is on again, say it: refettle back 'off({wheel.Id})'.")
            { Severity = Severity.Note };
    }

    /// <summary>What each way of doing it asks for; none where it was done off the car.</summary>
    private static IEnumerable<ValueList<Fact>> Alternatives(Car car, StepDone step) => step.Fact.Kind switch
    {
        FactKind.Open => car.Structure.Joints.Where(joint => joint.Id == step.Fact.Subject && !joint.Holds.Any(part => IsOff(car, part)))
            .SelectMany(joint => Said(joint.Ways, step.Way)).Select(way => way.Clear),
        FactKind.State =>
            car.Structure.States.Where(state => state.Id == step.Fact.Subject && !state.IsStance)
                .SelectMany(state => Said(state.Ways, step.Way)).Select(way => way.Clear),
        FactKind.Off => car.Structure.Parts.Where(part => part.Id == step.Fact.Subject).Select(part => part.Out.Clear)
            .Concat(car.Structure.SubAssemblies.Where(unit => unit.Id == step.Fact.Subject || unit.Members.Contains(step.Fact.Subject))
                .Select(unit => unit.Out.Clear)),
        _ => [],
    };

    private static IEnumerable<Way> Said(ValueList<Way> ways, string? said) =>
        ways.Where(way => string.IsNullOrEmpty(said) || way.Id == said);

    private static bool IsStance(Car car, Fact fact) =>
        fact.Kind == FactKind.State && car.Structure.States.Any(state => state.IsStance && state.Id == fact.Subject);

    private static bool IsOff(Car car, string part) => car.Done.Contains(Fact.Off(part))
        || car.Structure.SubAssemblies.Any(unit => unit.Members.Contains(part) && car.Done.Contains(Fact.Off(unit.Id)));

    private static string Name(Car car, string stance) =>
        (car.Structure.States.FirstOrDefault(state => state.Id == stance)?.Name ?? stance).ToLowerInvariant();
}
