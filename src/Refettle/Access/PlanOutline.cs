namespace Refettle.Access;

/// <summary>A plan as one works through it: steps by place, each with what follows from it without work.</summary>
/// <param name="Chapters">In order.</param>
public sealed record PlanOutline(ValueList<Chapter> Chapters)
{
    /// <summary>Parts that come off with their sub-assembly are told at its step; parts that are free and spaces that are open then,
    /// only where they are the goal or nothing else is left to tell them at.</summary>
    public static PlanOutline Of(Plan plan)
    {
        var lines = new List<(Step Step, int Index, List<Step> Along)>();
        var lineOf = new Dictionary<Fact, int>();
        for (var index = 0; index < plan.Steps.Count; index++)
        {
            var step = plan.Steps[index];
            var at = FollowsByItself(step) && !plan.Question.Goals.Contains(step.Fact)
                ? step.Needs.Where(lineOf.ContainsKey).Select(need => lineOf[need]).DefaultIfEmpty(-1).Max()
                : -1;
            if (at >= 0)
                lines[at].Along.Add(step);
            else
                lines.Add((step, index, []));
            lineOf[step.Fact] = at >= 0 ? at : lines.Count - 1;
        }

        return new(Divide(lines));
    }

    /// <summary>Whether a step is true without work once the steps before it are done.</summary>
    public static bool FollowsByItself(Step step) =>
        step.Fact.Kind is FactKind.Free or FactKind.Reach
        || (step.Fact.Kind == FactKind.Off && step.Way.StartsWith("with ", StringComparison.Ordinal));

    private static ValueList<Chapter> Divide(List<(Step Step, int Index, List<Step> Along)> lines)
    {
        var chapters = new List<Chapter>();
        for (var first = 0; first < lines.Count;)
        {
            var step = lines[first].Step;
            var end = first + 1;
            while (end < lines.Count && (FollowsByItself(lines[end].Step) || IsSameScene(lines[end].Step, step)))
                end++;
            var own = Enumerable.Range(first, end - first)
                .Select(i => new OutlineLine(i + 1, lines[i].Index, lines[i].Step, lines[i].Along.ToValueList()));
            chapters.Add(new(step.Place, step.Posture, step.Stance, own.ToValueList()));
            first = end;
        }

        return chapters.ToValueList();
    }

    private static bool IsSameScene(Step step, Step other) =>
        step.Place == other.Place && step.Posture == other.Posture && step.Stance == other.Stance;
}

/// <summary>Steps at one place, in one posture and stance.</summary>
/// <param name="Place">The zone's identifier, or <c>bench</c>.</param>
public sealed record Chapter(string Place, string Posture, string? Stance, ValueList<OutlineLine> Lines);

/// <summary>One thing to do.</summary>
/// <param name="Number">Counted through the outline, from 1.</param>
/// <param name="Index">Its place among the plan's steps, from 0.</param>
/// <param name="Along">What follows from it without work.</param>
public sealed record OutlineLine(int Number, int Index, Step Step, ValueList<Step> Along)
{
    /// <summary>Its own, then those of what comes along; each once.</summary>
    public IEnumerable<string> Cautions => Along.Prepend(Step).SelectMany(step => step.Cautions).Distinct();
}
