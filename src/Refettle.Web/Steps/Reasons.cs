using Refettle.Access;
using Refettle.Web.Words;

namespace Refettle.Web.Steps;

/// <summary>Why a step is in a plan, in words.</summary>
public static class Reasons
{
    /// <summary>From the step to the nearest goal, each fact because the next needs it.</summary>
    public static string Why(Plan plan, int step, CarLookup car)
    {
        var path = Path(plan, step);
        if (path.Count == 1)
            return plan.Question.Goals.Contains(path[0]) ? "This is what you want." : "Nothing after it needs it.";
        return "Needed for " + string.Join(", for ", path.Skip(1).Select(car.Name)) + ": what you want.";
    }

    /// <summary>The shortest chain from a step's fact to a goal, breadth first through what needs it.</summary>
    private static List<Fact> Path(Plan plan, int step)
    {
        var start = plan.Steps[step].Fact;
        var cameFrom = new Dictionary<Fact, Fact>();
        var seen = new HashSet<Fact> { start };
        var queue = new Queue<Fact>([start]);
        while (queue.TryDequeue(out var fact))
        {
            if (plan.Question.Goals.Contains(fact))
                return Back(fact, start, cameFrom);
            foreach (var next in plan.Steps.Where(other => other.Needs.Contains(fact)).Select(other => other.Fact).Where(seen.Add))
            {
                cameFrom[next] = fact;
                queue.Enqueue(next);
            }
        }

        return [start];
    }

    private static List<Fact> Back(Fact goal, Fact start, Dictionary<Fact, Fact> cameFrom)
    {
        var path = new List<Fact> { goal };
        while (path[^1] != start)
            path.Add(cameFrom[path[^1]]);
        path.Reverse();
        return path;
    }
}
