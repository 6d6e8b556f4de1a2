namespace Refettle.Access;

/// <summary>Whether a question can be asked of a car.</summary>
public static class QuestionCheck
{
    /// <summary>All faults: goals that name nothing on the car, fixed parts, two stances at once,
    /// parts both wanted and forbidden.</summary>
    public static ValueList<Fault> Of(Car car, Question question) => Of(new CarStanding(car), question);

    /// <summary>The same, for many questions of one car.</summary>
    public static ValueList<Fault> Of(CarStanding standing, Question question)
    {
        var faults = new List<Fault>();
        if (question.Goals.Count == 0)
            faults.Add(new("question", "there is no goal", "Name one or more, such as free(part), open(joint) or reach(space)."));
        foreach (var goal in question.Goals)
            faults.AddRange(GoalFaults(standing, goal, question.Without));
        var stances = question.Goals.Where(goal => standing.IsStance(goal)).Distinct().ToArray();
        if (stances.Length > 1)
            faults.Add(new("question", $"{string.Join(" and ", stances)} exclude each other", "Ask for one stance at a time."));
        foreach (var stance in stances)
        {
            faults.AddRange(question.Goals.Where(goal => standing.TakesOffCarrier(goal, standing.States[stance.Subject])).Select(goal =>
                new Fault("question", $"{goal} takes off what the car stands on in {stance}",
                    "Ask for one of them, or for another stance.")));
        }

        foreach (var part in question.Without.Where(part => !standing.Parts.ContainsKey(part)))
            faults.Add(Unknown("without", "part", part, standing.Parts.Keys));
        return faults.ToValueList();
    }

    /// <summary>Whether goals can be asked of a car without an error.</summary>
    public static bool CanBeAsked(CarStanding standing, ValueList<Fact> goals) =>
        Of(standing, new() { Goals = goals }).All(fault => fault.Severity != Severity.Error);

    private static IEnumerable<Fault> GoalFaults(CarStanding standing, Fact goal, ValueList<string> without)
    {
        var (what, names) = NamesFor(standing, goal.Kind);
        if (!names.Contains(goal.Subject))
            yield return Unknown($"goal {goal}", what, goal.Subject, names);
        else if (standing.Parts.TryGetValue(goal.Subject, out var part) && part.Fixed && goal.Kind is FactKind.Off or FactKind.Free)
            yield return new($"goal {goal}", $"{part.Name} is fixed: everything else hangs on it", "Ask for what you want off it.");
        if (goal.Kind is FactKind.Off or FactKind.Free && without.Contains(goal.Subject))
            yield return new($"goal {goal}", "the same part may not be touched", "Take it out of one of the two lists.");
    }

    private static (string What, IReadOnlyCollection<string> Names) NamesFor(CarStanding standing, FactKind kind) => kind switch
    {
        FactKind.Off => ("part or sub-assembly", [.. standing.Parts.Keys, .. standing.SubAssemblies.Keys]),
        FactKind.Free => ("part", [.. standing.Parts.Keys]),
        FactKind.Open => ("joint", [.. standing.Joints.Keys]),
        FactKind.State => ("state", [.. standing.States.Keys]),
        _ => ("space", [.. standing.Spaces.Keys]),
    };

    private static Fault Unknown(string place, string what, string name, IEnumerable<string> names) =>
        new(place, $"this car has no {what} called '{name}'", NearNames.Ask(name, names, "Look the name up in the list of parts."));
}
