using Refettle.Access.Derivation.Reduction;

namespace Refettle.Access.Derivation;

/// <summary>A reduced problem that can be solved for one set of limits after another.</summary>
internal sealed class LimitedCore
{
    private readonly LimitedProblem _problem;
    private readonly Core _core;
    private readonly IDerivationSolver _free;
    private readonly ILimitedSolver _forCores;
    private readonly DerivationAnswer _unlimited;
    private readonly List<int[]> _known = [];

    private LimitedCore(LimitedProblem problem, Core core, DerivationAnswer unlimited, IDerivationSolver free, ILimitedSolver forCores) =>
        (_problem, _core, _unlimited, _free, _forCores) = (problem, core, unlimited, free, forCores);

    /// <summary>Null when the goals cannot be made true, or no solution was found in time.</summary>
    public static LimitedCore? Of(LimitedProblem problem, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
    {
        var uses = problem.Limits.Select(limit => limit.Use).ToArray();
        var core = Hopeless.Drop(Core.Of(problem.Problem));
        while (core is not null)
        {
            var reduced = Reduce(core, uses);
            core = Landmarks.Add(reduced);
            if (!ReferenceEquals(core, reduced))
                continue;
            var unlimited = free.Solve(core.Problem, cancel);
            return unlimited.WayOf is null ? null : new(problem, core, unlimited, free, forCores);
        }

        return null;
    }

    /// <summary>The same, with nothing found yet: another row of questions can be put to it beside this one's.</summary>
    public LimitedCore Twin() => new(_problem, _core, _unlimited, _free, _forCores);

    /// <summary>The best solution without limits.</summary>
    public DerivationAnswer Unlimited => Unfolded(_unlimited);

    /// <summary>With the limits of the problem.</summary>
    public DerivationAnswer Solve(CancellationToken cancel) => Solve([.. _problem.Limits.Select(limit => limit.Most)], cancel);

    /// <summary>With other limits.</summary>
    public DerivationAnswer Solve(long[] most, CancellationToken cancel)
    {
        var settled = _core.Settled.Distinct().ToArray();
        var limited = new LimitedProblem(_core.Problem, _problem.Limits.Select((limit, number) =>
            new UseLimit(_core.Sums(limit.Use), most[number] - settled.Sum(way => limit.Use[way]))).ToValueList());
        if (limited.IsKept(_unlimited.WayOf!))
            return Unlimited;
        var answer = _forCores.Solve(limited with { Start = Start(limited, cancel) }, cancel);
        if (answer.WayOf is not null)
            _known.Add(answer.WayOf);
        return Unfolded(answer);
    }

    /// <summary>The better of a quick search and of what earlier questions brought.</summary>
    private int[]? Start(LimitedProblem limited, CancellationToken cancel) =>
        _known.Where(limited.IsKept).Append(LimitedStart.Of(limited, Priced(limited, cancel))).OfType<int[]>()
            .MinBy(wayOf => wayOf.Where(way => way >= 0).Sum(way => limited.Problem.Cost[way]));

    /// <summary>The best solution with what is short put on the bill (Lagrange relaxation).</summary>
    private DerivationAnswer Priced(LimitedProblem limited, CancellationToken cancel)
    {
        if (_forCores.Prices(limited) is not { } prices)
            return _unlimited;
        var problem = limited.Problem;
        var cost = problem.Cost
            .Select((own, way) => own + (long)limited.Limits.Select((limit, number) => limit.Use[way] * prices[number]).Sum());
        var priced = new DerivationProblem(problem.FactCount, [.. problem.FactOf], [.. problem.Needs.Select(needs => needs.ToArray())],
            [.. cost], [.. problem.Goals]);
        return _free.Solve(priced, cancel) is { WayOf: not null } answer ? answer : _unlimited;
    }

    private DerivationAnswer Unfolded(DerivationAnswer answer)
    {
        if (answer.WayOf is not null)
            return Unfolding.Of(_problem.Problem,
                _core.Settled.Concat(answer.WayOf.Where(way => way >= 0).SelectMany(way => _core.Stands[way])), answer.Cost - answer.Bound);
        var settled = _core.Settled.Distinct().Sum(way => _problem.Problem.Cost[way]);
        return answer.Bound == long.MaxValue ? answer : answer with { Bound = answer.Bound + settled };
    }

    private static Core Reduce(Core core, long[][] uses)
    {
        int before;
        do
        {
            before = core.Size;
            core = Contraction.Apply(Dominance.Drop(SelfSupport.Drop(Settling.Apply(core)), uses));
            core = Hopeless.DropIrrelevant(core);
        }
        while (core.Size < before);
        return core;
    }
}
