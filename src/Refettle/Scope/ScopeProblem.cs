using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Scope;

/// <summary>The choice of jobs as a least-cost derivation, in hundredths of the car's currency.</summary>
/// <remarks>
/// To the facts of the access model each job adds one, <em>worked</em>, which needs its goals and
/// costs its work and parts; and each job that may be left adds another, <em>settled</em>, which is a goal and has two ways: done (needs
/// the job worked, and those it makes no sense without; costs nothing) or given up (needs nothing; costs its worth). Musts are goals. The
/// least cost is then all worth less the greatest gain.
/// </remarks>
internal sealed class ScopeProblem
{
    private const long NoLimit = long.MaxValue / 4;

    private readonly Compilation _access;
    private readonly List<int> _factOf;
    private readonly List<int[]> _needs;
    private readonly List<long> _cost;
    private readonly List<long> _time;
    private readonly List<long> _money;
    private readonly List<int> _goals = [];
    private readonly Dictionary<Fact, int> _factNumbers;
    private readonly Dictionary<int, int> _workedWays = [];
    private int _facts;

    public ScopeProblem(Car car, ScopeQuestion question)
    {
        Standing = new(car with { Settings = car.Settings with { PerHour = question.PerHour } });
        (Jobs, PerHour) = (new(car, question), question.PerHour);
        _access = Compilation.Of(Standing, new() { Goals = Jobs.Goals(Enumerable.Range(0, Jobs.Jobs.Length)) });
        var access = _access.Problem;
        _facts = access.FactCount + Jobs.Jobs.Length;
        _factNumbers = Enumerable.Range(0, _access.Facts.Count).ToDictionary(number => _access.Facts[number]);
        (_factOf, _needs) = ([.. access.FactOf], [.. access.Needs.Select(needs => needs.ToArray())]);
        _cost = [.. access.Cost.Select(Cents)];
        _time = [.. _access.Ways.Select(way => Pricing.Hundredths(way.Cost.Open + way.Cost.Close)),
            .. new long[access.WayCount - _access.Ways.Count]];
        _money = [.. _access.Ways.Select(way => way.Way is null ? 0 : Up(Pricing.MoneyOf(way.Way, Standing).Amount)),
            .. new long[access.WayCount - _access.Ways.Count]];
        for (var job = 0; job < Jobs.Jobs.Length; job++)
            AddWorked(job);
        for (var job = 0; job < Jobs.Jobs.Length; job++)
            AddSettled(job);
        _goals.AddRange(Jobs.Musts().Select(WorkedFact));
        Problem = With(_goals);
    }

    public CarStanding Standing { get; }

    public JobList Jobs { get; }

    public Money PerHour { get; }

    public DerivationProblem Problem { get; }

    /// <summary>The choice with limits of time and money; null is no limit.</summary>
    public LimitedProblem Within(Minutes? time, Money? money) => Within(Problem, time, money);

    /// <summary>Some of the jobs, no more and no less, with limits of time and money.</summary>
    public LimitedProblem Within(DerivationProblem jobs, Minutes? time, Money? money) =>
        new(jobs, [new([.. _time], MostTime(time)), new([.. _money], MostMoney(money))]);

    /// <summary>The choice, reduced, to be solved for one set of limits after another; null when the musts
    /// cannot be done whatever is spent.</summary>
    public LimitedCore? Core(IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel) =>
        LimitedCore.Of(Within(null, null), free, forCores, cancel);

    /// <summary>The same with a third limit: at least one of some jobs is left, whatever is spent. A job
    /// that costs nothing counts as a hundredth here, so that it can be counted.</summary>
    public LimitedCore? CoreWithout(
        IReadOnlyCollection<int> jobs, IDerivationSolver free, ILimitedSolver forCores, CancellationToken cancel)
    {
        var (use, cost) = (new long[_cost.Count], _cost.ToArray());
        foreach (var way in jobs.Select(job => _workedWays[job]))
            (use[way], cost[way]) = (1, Math.Max(1, cost[way]));
        var problem = new DerivationProblem(_facts, [.. _factOf], [.. _needs], cost, [.. _goals.Distinct()]);
        var within = Within(problem, null, null);
        return LimitedCore.Of(within with { Limits = [.. within.Limits, new(use, jobs.Count - 1)] }, free, forCores, cancel);
    }

    public static long[] Most(Minutes? time, Money? money) => [MostTime(time), MostMoney(money)];

    private static long MostTime(Minutes? time) => time is { } most ? Down(most.Value) : NoLimit;

    private static long MostMoney(Money? money) => money is { } most ? Down(most.Amount) : NoLimit;

    /// <summary>The least cost of some jobs, no more and no less.</summary>
    public DerivationProblem For(IEnumerable<int> jobs) => With(jobs.Select(WorkedFact));

    /// <summary>Number of a fact; -1 for one that holds already or is not called for.</summary>
    public int NumberOf(Fact fact) => _factNumbers.GetValueOrDefault(fact, -1);

    public Fact FactOf(int number) => _access.Facts[number];

    public int AccessFacts => _access.Facts.Count;

    public int WorkedFact(int job) => _access.Problem.FactCount + job;

    /// <summary>The jobs that an answer works.</summary>
    public int[] JobsOf(DerivationAnswer answer) =>
        [.. Enumerable.Range(0, Jobs.Jobs.Length).Where(job => answer.WayOf![WorkedFact(job)] >= 0)];

    /// <summary>What an answer brings and takes.</summary>
    public ScopeSum SumOf(DerivationAnswer answer)
    {
        var jobs = JobsOf(answer);
        var ways = answer.WayOf!.Where(way => way >= 0 && way < _access.Problem.WayCount).ToArray();
        var opened = ways.Where(way => way < _access.Ways.Count).Select(way => _access.Ways[way]).ToArray();
        return new(
            jobs.Sum(Jobs.WorthOf),
            new(opened.Sum(way => way.Way is null ? 0 : Pricing.MoneyOf(way.Way, Standing).Amount)
                + jobs.Sum(job => Jobs.Jobs[job].Parts.Amount)),
            new(opened.Sum(way => (way.Cost.Open + way.Cost.Close).Value)),
            new(jobs.Sum(job => Jobs.Jobs[job].Work.Value)),
            new(Standing.Car.Settings.UniqueOff.Value * (ways.Length - opened.Length)));
    }

    /// <summary>The opening that an answer stands for, in order.</summary>
    public Plan PlanOf(DerivationAnswer answer, Minutes bound)
    {
        var question = new Question { Goals = Jobs.Goals(JobsOf(answer)) };
        var own = answer.WayOf![.._access.Problem.FactCount];
        return AccessPlanner.PlanOf(Standing, question, _access, new(own, long.MaxValue, 0)) with { Bound = bound };
    }

    private void AddWorked(int job)
    {
        var own = Jobs.Jobs[job];
        if (Jobs.IsLeft(job) || Jobs.IsTooLong(job))
            return;
        _workedWays.Add(job, _factOf.Count);
        Add(WorkedFact(job), own.Goals.Select(NumberOf).Where(fact => fact >= 0), Up(own.Work.Value), Up(own.Parts.Amount));
    }

    private void AddSettled(int job)
    {
        var worth = decimal.ToInt64(decimal.Round(Jobs.WorthOf(job) * 100));
        if (Jobs.IsMust(job) || worth == 0)
            return;
        var settled = _facts++;
        _goals.Add(settled);
        Add(settled, Jobs.With[job].Select(WorkedFact), 0, 0);
        Add(settled, [], 0, 0);
        _cost[^1] = worth;
    }

    private void Add(int fact, IEnumerable<int> needs, long time, long money)
    {
        _factOf.Add(fact);
        _needs.Add([.. needs.Distinct()]);
        _cost.Add(Cents(time) + money);
        _time.Add(time);
        _money.Add(money);
    }

    private DerivationProblem With(IEnumerable<int> goals) => new(_facts, [.. _factOf], [.. _needs], [.. _cost], [.. goals.Distinct()]);

    /// <summary>What costs anything costs at least 1, so that what costs nothing uses nothing.</summary>
    private long Cents(long hundredthsOfMinutes) =>
        hundredthsOfMinutes == 0 ? 0 : Math.Max(1, decimal.ToInt64(decimal.Round(hundredthsOfMinutes * PerHour.Amount / 60)));

    // What is used rounds up and what there is rounds down: what keeps the limits here keeps them to the last digit.
    private static long Up(decimal figure) => decimal.ToInt64(decimal.Ceiling(figure * 100));

    private static long Down(decimal figure) => decimal.ToInt64(decimal.Floor(figure * 100));
}
