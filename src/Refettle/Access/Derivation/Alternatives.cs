namespace Refettle.Access.Derivation;

/// <summary>The next best solutions that differ in a choice that matters, each leaving out one that all better ones share.</summary>
/// <remarks>Lawler, A procedure for computing the k best solutions, Management Science 18 (1972): a solution other than the best must do
/// without at least one of its ways, so the second best is the best over all such bans; and so on from each.</remarks>
internal static class Alternatives
{
    /// <param name="problem">The problem.</param>
    /// <param name="best">Its best solution.</param>
    /// <param name="matters">Whether doing without a fact, or making it true another way, makes a different plan.</param>
    /// <param name="solver">Solves the problem with choices banned.</param>
    /// <param name="most">At most this many.</param>
    /// <param name="cancel">Ends the search with what is found.</param>
    public static IEnumerable<DerivationAnswer> Of(
        DerivationProblem problem, DerivationAnswer best, Func<int, bool> matters, IDerivationSolver solver, int most, CancellationToken cancel)
    {
        var found = new PriorityQueue<(DerivationAnswer Answer, int[] Banned), long>();
        var seen = new HashSet<string> { Key(best) };
        Branch(best, []);
        while (most-- > 0 && found.TryDequeue(out var next, out _))
        {
            yield return next.Answer;
            if (most > 0)
                Branch(next.Answer, next.Banned);
        }

        string Key(DerivationAnswer answer) =>
            string.Join(',', answer.WayOf!.Where(way => way >= 0 && matters(problem.FactOf[way])));

        void Branch(DerivationAnswer answer, int[] banned)
        {
            foreach (var way in answer.WayOf!)
            {
                if (way < 0 || !matters(problem.FactOf[way]) || cancel.IsCancellationRequested)
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
}
