using Refettle.Access.Derivation.Reduction;

namespace Refettle.Access.Derivation;

/// <summary>Reduces a problem until little is left, splits the rest into islands, and solves each: by tree search, or by the
/// given solver where that gives up.</summary>
/// <param name="forHardCores">Solves what tree search leaves open; null leaves it with its bound.</param>
/// <param name="mostNodes">Nodes of tree search for each island.</param>
public sealed class ReducedSolver(IDerivationSolver? forHardCores = null, long mostNodes = 2_000) : IDerivationSolver
{
    public DerivationAnswer Solve(DerivationProblem problem, CancellationToken cancel = default)
    {
        var core = Hopeless.Drop(Core.Of(problem));
        if (core is null)
            return DerivationAnswer.Impossible;
        var chosen = new List<int>();
        var slack = SolveCore(core, chosen, cancel);
        return Unfolding.Of(problem, chosen, slack);
    }

    /// <summary>Adds the ways that solve a core to the chosen ones.</summary>
    /// <returns>By how much their cost may be above the least.</returns>
    private long SolveCore(Core core, List<int> chosen, CancellationToken cancel)
    {
        core = Reduce(core);
        chosen.AddRange(core.Settled);
        var slack = 0L;
        foreach (var island in Islands.Split(core))
        {
            if (island.Problem.Goals.IsEmpty)
                continue;
            var more = Landmarks.Add(island);
            slack += ReferenceEquals(more, island) ? SolveIsland(island, chosen, cancel) : SolveCore(more, chosen, cancel);
        }

        return slack;
    }

    private static Core Reduce(Core core)
    {
        int before;
        do
        {
            before = core.Size;
            core = Contraction.Apply(Dominance.Drop(SelfSupport.Drop(Settling.Apply(core))));
            core = Hopeless.DropIrrelevant(core);
        }
        while (core.Size < before);
        return core;
    }

    private long SolveIsland(Core island, List<int> chosen, CancellationToken cancel)
    {
        var answer = new TreeSearch(mostNodes).Solve(island.Problem, cancel);
        if (!answer.IsOptimal && forHardCores is not null && !cancel.IsCancellationRequested)
            answer = Better(answer, forHardCores.Solve(island.Problem, cancel));
        if (answer.WayOf is null)
            throw new InvalidOperationException("An island of a possible problem has no solution.");
        foreach (var way in answer.WayOf)
        {
            if (way >= 0)
                chosen.AddRange(island.Stands[way]);
        }

        return answer.Cost - answer.Bound;
    }

    private static DerivationAnswer Better(DerivationAnswer first, DerivationAnswer second)
    {
        var bound = Math.Max(first.Bound, second.Bound);
        return second.WayOf is null || first.Cost < second.Cost ? first with { Bound = bound } : second with { Bound = bound };
    }
}
