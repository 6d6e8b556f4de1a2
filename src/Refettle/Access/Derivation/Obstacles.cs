using Refettle.Access.Fire;

namespace Refettle.Access.Derivation;

/// <summary>Finds out why there is no plan.</summary>
internal static class Obstacles
{
    /// <summary>The fewest permissions that would make a plan possible, proven; where none would, a small circle of stuck facts.</summary>
    public static Obstacle Of(CarStanding standing, Question question, IDerivationSolver solver, CancellationToken cancel)
    {
        var permissions = new List<string>();
        var compilation = Compilation.OfPermissions(standing, question, permissions);
        var answer = solver.Solve(compilation.Problem, cancel);
        if (answer.WayOf is null)
            return Of(standing, Stuck(compilation));
        var used = permissions.Where((_, number) => answer.WayOf[compilation.Facts.Count + number] >= 0);
        return new() { Forbidden = used.ToValueList(), Proven = answer.IsOptimal };
    }

    private static Obstacle Of(CarStanding standing, ValueList<Fact> stuck) => new()
    {
        Stuck = stuck,
        Fire = stuck.Where(fact => fact.Kind == FactKind.Open).SelectMany(fact => Fires(standing, standing.Joints[fact.Subject]))
            .ToValueList(),
        Weak = stuck.Where(fact => fact.Kind == FactKind.State && standing.States[fact.Subject].IsStance)
            .SelectMany(fact => Weak(standing, standing.States[fact.Subject])).ToValueList(),
    };

    private static IEnumerable<string> Weak(CarStanding standing, State stance) => standing.Carriers(stance)
        .Select(part => (standing.Parts[part].Name, Why: Failing(standing, part)))
        .Where(carrier => carrier.Why is not null)
        .Select(carrier => $"{stance.Name}: {carrier.Name} {carrier.Why}");

    /// <summary>Why a part does not carry the car; null where it does.</summary>
    private static string? Failing(CarStanding standing, string part) => standing.Car.Unsound.Contains(part)
        ? "has to carry the car and was found too weak"
        : standing.IsTrue(Fact.Off(part)) ? "has to carry the car and is off" : null;

    private static IEnumerable<string> Fires(CarStanding standing, Joint joint)
    {
        foreach (var way in joint.Ways.Where(way => (HotWork.Of(way, joint) & Danger.Fire) != 0))
        {
            var near = FireNeeds.Near(standing, joint.Holds)
                .Where(one => !FireNeeds.IsAway(standing, one) && (way.Where == WorkPlace.OnCar || one.Mend is null))
                .Select(one => $"{one.Part.Name} ({one.Cause})").Distinct().Order(StringComparer.Ordinal).ToList();
            if (near.Count > 0)
                yield return $"{Wording.JointName(joint, standing)} by {way.Tool}: no flame, sparks or cut near {string.Join(", ", near)}";
        }
    }

    /// <summary>A set of underivable facts in which every way of each needs another of the set: the smallest that growing from any one
    /// fact gives.</summary>
    private static ValueList<Fact> Stuck(Compilation compilation)
    {
        var problem = compilation.Problem;
        var derivable = Closure.Derivable(problem);
        var smallest = Enumerable.Range(0, problem.FactCount).Where(fact => !derivable[fact])
            .Select(fact => Grow(problem, derivable, fact)).MinBy(set => set.Count) ?? [];
        return smallest.Select(fact => compilation.Facts[fact]).Order().ToValueList();
    }

    private static HashSet<int> Grow(DerivationProblem problem, bool[] derivable, int seed)
    {
        var set = new HashSet<int> { seed };
        var queue = new Queue<int>([seed]);
        while (queue.TryDequeue(out var fact))
        {
            foreach (var way in problem.WaysOf(fact))
            {
                var missing = problem.Needs[way].Where(need => !derivable[need]).ToArray();
                if (missing.Any(set.Contains))
                    continue;
                set.Add(missing[0]);
                queue.Enqueue(missing[0]);
            }
        }

        return set;
    }
}
