namespace Refettle.Access.Derivation;

/// <summary>The next best solutions that differ in a choice that matters, each leaving out one of every better one.</summary>
/// <remarks>Lawler, A procedure for computing the k best solutions, Management Science 18 (1972): a solution other than the best must do
/// without at least one of its ways, so the second best is the best over all such bans; and so on
/// from each. A way that is banned in another branch is spared in those after it: what does without both is found in the other. A branch is
/// solved when none that may be better is left.</remarks>
internal sealed class Alternatives
{
    private readonly DerivationProblem _problem;
    private readonly Func<int, bool> _matters;
    private readonly IDerivationSolver _solver;
    private readonly PriorityQueue<Branch, long> _open = new();
    private readonly Dictionary<int, long> _leastWithout = [];

    /// <param name="Answer">Null while it is not solved.</param>
    /// <param name="Bound">No solution of the branch costs less.</param>
    private sealed record Branch(DerivationAnswer? Answer, int[] Banned, HashSet<int> Spared, long Bound);

    private Alternatives(DerivationProblem problem, Func<int, bool> matters, IDerivationSolver solver) =>
        (_problem, _matters, _solver) = (problem, matters, solver);

    /// <param name="problem">The problem.</param>
    /// <param name="best">Its best solution.</param>
    /// <param name="matters">Whether doing without a fact, or making it true another way, makes a different plan.</param>
    /// <param name="solver">Solves the problem with choices banned.</param>
    /// <param name="most">At most this many.</param>
    /// <param name="cancel">Ends the search with what is found.</param>
    public static IEnumerable<DerivationAnswer> Of(
        DerivationProblem problem, DerivationAnswer best, Func<int, bool> matters, IDerivationSolver solver, int most,
        CancellationToken cancel) =>
        new Alternatives(problem, matters, solver).Next(best, cancel).Skip(1).Take(most);

    /// <summary>The best first.</summary>
    private IEnumerable<DerivationAnswer> Next(DerivationAnswer best, CancellationToken cancel)
    {
        var seen = new HashSet<string>();
        Add(new(best, [], [], best.Cost));
        while (!cancel.IsCancellationRequested && _open.TryDequeue(out var next, out _))
        {
            if (next.Answer is not { } answer)
            {
                Add(Solved(next, cancel));
                continue;
            }

            if (seen.Add(string.Join(',', Choices(answer))))
                yield return answer;
            Divide(next, answer);
        }
    }

    private IEnumerable<int> Choices(DerivationAnswer answer) => answer.WayOf!.Where(way => way >= 0 && _matters(_problem.FactOf[way]));

    private void Add(Branch branch)
    {
        if (branch.Answer is null or { WayOf: not null } && branch.Bound < long.MaxValue)
            _open.Enqueue(branch, branch.Bound);
    }

    private Branch Solved(Branch branch, CancellationToken cancel)
    {
        var answer = _solver.Solve(Without(branch.Banned), cancel);
        if (branch.Banned is [var only])
            _leastWithout[only] = answer.Bound;
        return branch with { Answer = answer, Bound = answer.Cost };
    }

    private void Divide(Branch branch, DerivationAnswer answer)
    {
        var spared = branch.Spared;
        foreach (var way in Choices(answer).Where(way => !branch.Spared.Contains(way)))
        {
            Add(new(null, [.. branch.Banned, way], spared, Math.Max(branch.Bound, _leastWithout.GetValueOrDefault(way))));
            spared = [.. spared, way];
        }
    }

    /// <summary>The same numbering, with the banned ways made unusable by needing their own fact.</summary>
    private DerivationProblem Without(int[] banned)
    {
        var needs = _problem.Needs.Select((needs, way) => banned.Contains(way) ? [_problem.FactOf[way]] : needs.ToArray()).ToArray();
        return new(_problem.FactCount, [.. _problem.FactOf], needs, [.. _problem.Cost], [.. _problem.Goals]);
    }
}
