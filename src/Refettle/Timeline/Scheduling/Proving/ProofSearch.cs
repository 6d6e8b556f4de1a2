namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Proves that no schedule finishes by a time, or finds one: tries starts, draws what follows, and learns from each conflict a
/// clause (lazy clause generation: Ohrimenko, Stuckey and Codish 2009). For projects without working hours, of at most
/// <see cref="Profile.MostResources"/> resources.</summary>
internal sealed class ProofSearch
{
    /// <summary>Conflicts until the search begins anew, times the sequence of Luby, Sinclair and Zuckerman (1993).</summary>
    private const int Patience = 50;

    /// <summary>Clauses until some are forgotten; each time a few more.</summary>
    private const int FirstForgetting = 6_000, MoreEachTime = 1_000;

    /// <summary>Clauses of statements of no more levels are told to others.</summary>
    private const int WorthTelling = 7;

    /// <summary>What questions keep of their praise: those that search together differ, so that one sees what another does not.</summary>
    private static readonly double[] Fading = [0.85, 0.75];

    private readonly int _origin;
    private readonly int[] _duration;
    private readonly bool _isImpossible;
    private readonly Exchange _exchange;
    private readonly int _place;
    private readonly Deduction _deduction;
    private readonly Branching _branching;
    private readonly Analysis _analysis;
    private int _finish = int.MaxValue;
    private int _forgetAt = FirstForgetting;

    /// <param name="earliest">The earliest starts to look at.</param>
    /// <param name="latest">The latest starts to look at.</param>
    /// <param name="place">Which of those that share an exchange this is.</param>
    public ProofSearch(Network network, int[] earliest, int[] latest, int seed, Exchange exchange, int place)
    {
        (_origin, _duration, _exchange, _place) = (earliest.Min(), network.Duration, exchange, place);
        _isImpossible = earliest.Zip(latest).Any(start => start.First > start.Second);
        _deduction = new(network, [.. earliest.Select(start => start - _origin)],
            [.. latest.Select((start, i) => Math.Max(start, earliest[i]) - _origin)]);
        _branching = new(Bounds, Fading[place % Fading.Length], new Random((seed * 31) + place));
        _analysis = new(_deduction, network.Duration, _branching);
    }

    /// <summary>Conflicts learned from so far.</summary>
    public long Conflicts { get; private set; }

    private Bounds Bounds => _deduction.Bounds;

    private Clauses Clauses => _deduction.Clauses;

    /// <summary>Whether a project is of the kind that can be searched, and small enough: each possible start of each activity has
    /// its place.</summary>
    public static bool CanTake(Builder builder)
    {
        var network = builder.Network;
        var span = (long)builder.Horizon - builder.Floor;
        return !network.HasWindows && !network.HasDone && network.Capacity.Length <= Profile.MostResources
            && span < short.MaxValue / 2 && network.Count < short.MaxValue && span * network.Count < 1_000_000
            && Array.TrueForAll(network.Capacity, IsSmall)
            && Array.TrueForAll(network.Needs, needs => Array.TrueForAll(needs, IsSmall));
    }

    private static bool IsSmall(int amount) => amount < short.MaxValue / 2;

    /// <param name="finish">The finish wanted; asked again from time to time, it may have become earlier.</param>
    /// <param name="likely">A schedule near which to look first, asked again when the finish wanted has become earlier; null when there is
    /// none.</param>
    /// <param name="found">Told of each schedule that finishes by then, and makes the finish wanted earlier.</param>
    /// <returns>Whether it is proven that there is none; false when the search was stopped.</returns>
    public bool Run(Func<int> finish, Func<int[]?> likely, Action<int[]> found, CancellationToken cancel)
    {
        for (var run = 1; !cancel.IsCancellationRequested; run++)
        {
            var before = _finish;
            if (!Prepare(finish()))
                return true;
            if (run == 1 || _finish < before)
                LookNear(likely());
            var until = Conflicts + (Patience * Luby(run));
            while (Conflicts < until && !cancel.IsCancellationRequested)
            {
                if (!_deduction.Follow())
                {
                    if (Bounds.Level == 0)
                        return true;
                    Learn();
                    continue;
                }

                if (_branching.Next() is not { } next)
                {
                    found([.. Enumerable.Range(0, _duration.Length).Select(i => Bounds.Earliest(i) + _origin)]);
                    break;
                }

                Bounds.Try(next);
            }
        }

        return false;
    }

    /// <summary>Looks near a schedule moved so that it finishes in time: what is in its way then lies at the beginning, and all else fits
    /// together.</summary>
    private void LookNear(int[]? likely)
    {
        if (likely is null)
        {
            _branching.LookNear(null);
            return;
        }

        var late = Math.Max(0, likely.Zip(_duration, (start, duration) => start + duration).Max() - _finish);
        _branching.LookNear([.. likely.Select(start => start - late - _origin)]);
    }

    /// <summary>Goes back to the beginning, with the finish wanted, what others learned, and less that is of no use.</summary>
    /// <returns>False when there is nothing left to look at.</returns>
    private bool Prepare(int finish)
    {
        TakeBack(0);
        return !_isImpossible && HasToFinish(finish) && Hear() && _deduction.Follow() && (Clauses.Count < _forgetAt || Forget());
    }

    private bool HasToFinish(int finish)
    {
        if (finish >= _finish)
            return true;
        _finish = finish;
        for (var i = 0; i < _duration.Length; i++)
        {
            var latest = finish - _duration[i] - _origin;
            if (latest < Bounds.Latest(i) && !Bounds.TrySet(Statement.Until(i, latest), default))
                return false;
        }

        return true;
    }

    private bool Hear()
    {
        foreach (var told in _exchange.Hear(_place, _finish))
        {
            if (!Clauses.AddAtRoot(told.Statements, told.Levels))
                return false;
        }

        return true;
    }

    private bool Forget()
    {
        _forgetAt += MoreEachTime;
        return Clauses.Forget();
    }

    private void Learn()
    {
        Conflicts++;
        _analysis.Learn();
        TakeBack(_analysis.BackTo);
        var learned = _analysis.Learned;
        if (_analysis.Levels <= WorthTelling)
            _exchange.Tell(_place, _finish, learned, _analysis.Levels);
        var reason = learned.Length > 1 ? Reason.OfClause(Clauses.Add(learned, _analysis.Levels)) : default;
        Bounds.TrySet(new(learned[0]), reason);
        _branching.Age();
        Clauses.Age();
    }

    private void TakeBack(int level)
    {
        if (level == Bounds.Level)
            return;
        _branching.TakeBack(Bounds.FirstAbove(level));
        _deduction.TakeBack(level);
    }

    /// <summary>1, 1, 2, 1, 1, 2, 4, 1, …</summary>
    private static int Luby(int place)
    {
        var power = 1;
        while (power <= place)
            power *= 2;
        return power == place + 1 ? power / 2 : Luby(place - (power / 2) + 1);
    }
}
