namespace Refettle.Access;

/// <summary>Tells why a step is in a plan.</summary>
public static class Why
{
    /// <returns>The goals that need the fact and the shortest chain to one; null when the plan has no such step.</returns>
    public static WhyAnswer? Of(Plan plan, Fact fact)
    {
        if (plan.Steps.All(step => step.Fact != fact))
            return null;
        var users = plan.Steps.SelectMany(step => step.Needs, (step, need) => (step, need))
            .ToLookup(pair => pair.need, pair => pair.step.Fact);
        var from = new Dictionary<Fact, Fact?> { [fact] = null };
        var queue = new Queue<Fact>([fact]);
        var goals = new List<Fact>();
        while (queue.TryDequeue(out var current))
        {
            if (plan.Question.Goals.Contains(current))
                goals.Add(current);
            foreach (var user in users[current])
            {
                if (from.TryAdd(user, current))
                    queue.Enqueue(user);
            }
        }

        return new(fact, goals.ToValueList(), goals.Count == 0 ? [] : Path(from, goals[0]));
    }

    private static ValueList<Fact> Path(Dictionary<Fact, Fact?> from, Fact goal)
    {
        var path = new List<Fact>();
        for (Fact? fact = goal; fact is { } step; fact = from[step])
            path.Add(step);
        path.Reverse();
        return path.ToValueList();
    }
}
