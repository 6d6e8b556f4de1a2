namespace Refettle.Access.Derivation;

/// <summary>The next best solutions, each leaving out a choice that all better ones share.</summary>
/// <remarks>Lawler, A procedure for computing the k best solutions, Management Science 18 (1972): a solution other than the best must do
/// without at least one of its ways, so the second best is the best over all such bans; and so on from each.</remarks>
internal static class Alternatives
{
    public static IEnumerable<DerivationAnswer> Of(
        DerivationProblem problem, DerivationAnswer best, IDerivationSolver solver, int most, CancellationToken cancel)
    {
        var found = new PriorityQueue<(DerivationAnswer Answer, int[] Banned), long>();
        var seen = new HashSet<string> { Key(best) };
        Branch(best, []);
        while (most-- > 0 && found.TryDequeue(out var next, out _))
        {
            yield return next.Answer;
            Branch(next.Answer, next.Banned);
        }

        void Branch(DerivationAnswer answer, int[] banned)
        {
            foreach (var way in answer.WayOf!)
            {
                if (way < 0 || problem.WaysOf(problem.FactOf[way]).Length < 2 || cancel.IsCancellationRequested)
                    continue;
                int[] bans = [.. banned, way];
                var other = solver.Solve(Without(problem, bans), cancel);
                if (other.WayOf is not null && seen.Add(Key(other)))
                    found.Enqueue((other, bans), other.Cost);
            }
        }
    }

    /// <summary>The same numbering, with the banned ways made unusable by needing their own fact.</summary>
    private static DerivationProblem Without(DerivationProblem problem, int[] banned)
    {
        var needs = problem.Needs.Select((needs, way) => banned.Contains(way) ? [problem.FactOf[way]] : needs.ToArray()).ToArray();
        return new(problem.FactCount, [.. problem.FactOf], needs, [.. problem.Cost], [.. problem.Goals]);
    }

    private static string Key(DerivationAnswer answer) => string.Join(',', answer.WayOf!.Where(way => way >= 0));
}
