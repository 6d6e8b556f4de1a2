using Refettle.Access;
using Refettle.Peers.Cars;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>What must hold of every choice.</summary>
public sealed class ScopeProperties
{
    public static TheoryData<int> Seeds => new(Enumerable.Range(500, 24));

    private static ScopePlanner Planner => RandomScope.Planner;

    [Theory]
    [MemberData(nameof(Seeds))]
    public void An_answer_adds_up_and_a_changed_one_does_not(int seed)
    {
        var (car, question) = Make(seed);
        var scope = Planner.Choose(car, question);
        if (scope.Status == PlanStatus.Impossible)
            return;
        Assert.Empty(ScopeCheck.Of(car, scope));
        Assert.NotEmpty(ScopeCheck.Of(car, scope with { Gain = scope.Gain + 1 }));
        Assert.NotEmpty(ScopeCheck.Of(car, scope with { Sum = scope.Sum with { Money = new(scope.Sum.Money.Amount + 0.01m) } }));
        Assert.NotEmpty(ScopeCheck.Of(car, scope with { Sum = scope.Sum with { Opening = scope.Sum.Opening + new Minutes(1) } }));
        Assert.NotEmpty(ScopeCheck.Of(car, scope with { Question = question with { Hours = new(scope.Sum.Time.Value - 0.01m) } }));
        if (scope.Chosen.Count > 0)
            Assert.NotEmpty(ScopeCheck.Of(car, scope with { Chosen = scope.Chosen.Skip(1).ToValueList() }));
        if (scope.Plan!.Steps.Count > 0)
            Assert.NotEmpty(ScopeCheck.Of(car, scope with { Plan = scope.Plan with { Steps = scope.Plan.Steps.Skip(1).ToValueList() } }));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void More_to_spend_never_gains_less(int seed)
    {
        var (car, question) = Make(seed);
        var gain = decimal.MinValue;
        for (var share = 4; share <= 12; share += 2)
        {
            var more = Planner.Choose(car,
                question with
                {
                    Hours = new(question.Hours!.Value.Value * share / 8),
                    Budget = question.Budget is { } budget ? new(budget.Amount * share / 8) : null
                });
            if (more.Status == PlanStatus.Impossible)
            {
                Assert.Equal(decimal.MinValue, gain);
                continue;
            }

            Assert.True(more.Gain >= gain, $"{share}/8: {more.Gain} after {gain}");
            gain = more.Gain;
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_job_that_is_worth_nothing_is_in_only_as_a_must_or_for_another(int seed)
    {
        var (car, question) = Make(seed);
        car = car with
        {
            Jobs = car.Jobs
                .Select((job, number) => number % 3 == 0
                    ? job with
                    {
                        Wish = Wish.Want,
                        Worth = new(0, 0, 9, WorthUnit.Points, Origin.User),
                        Work = default,
                        Parts = default,
                        Goals = []
                    }
                    : job).ToValueList()
        };
        var scope = Planner.Choose(car, question);
        foreach (var job in car.Jobs.Where((job, number) => number % 3 == 0 && scope.Chosen.Contains(job.Id)))
            Assert.Contains(car.Jobs, other => scope.Chosen.Contains(other.Id) && other.With.Contains(job.Id));
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_order_and_the_names_of_jobs_mean_nothing(int seed)
    {
        var (car, question) = Make(seed);
        var renamed = car with
        {
            Jobs = car.Jobs.Reverse()
                .Select(job => job with { Id = $"x-{job.Id}", With = job.With.Select(other => $"x-{other}").ToValueList() })
                .ToValueList()
        };
        Assert.Equal(Planner.Choose(car, question).Gain, Planner.Choose(renamed, question).Gain);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_chosen_job_given_the_rest_brings_no_less_than_it_takes(int seed)
    {
        var (car, _) = Make(seed);
        var free = RandomScope.Question(car);
        var scope = Planner.Choose(car, free);
        var reasons = Planner.Explain(car, scope);
        Assert.Equal(car.Jobs.Count, reasons.Costs.Count);
        foreach (var cost in reasons.Costs
            .Where(cost => !cost.Along.Append(cost.Job).Any(job => car.Jobs.Single(known => known.Id == job).Wish == Wish.Must)))
            Assert.True(cost.IsIn == scope.Chosen.Contains(cost.Job)
                && (cost.IsIn ? cost.Takes.Gain(free.PerHour) >= 0 : cost.Takes.Gain(free.PerHour) <= 0),
                $"{cost.Job} {cost.IsIn} {cost.Takes}");
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void What_is_dropped_first_is_the_best_choice_with_a_little_less(int seed)
    {
        var (car, question) = Make(seed);
        var scope = Planner.Choose(car, question);
        foreach (var first in Planner.Explain(car, scope).First)
        {
            var less = Planner.Choose(car, first.Short == ScopeLimit.Time
                ? question with { Hours = first.Sum.Time }
                : question with { Budget = first.Sum.Money });
            Assert.Equal(scope.Gain - less.Gain, first.Loses);
            Assert.True(first.Loses >= 0 && first.Gone.Count > 0);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_brake_tells_what_adding_does(int seed)
    {
        var (car, question) = Make(seed);
        var scope = Planner.Choose(car, question);
        if (scope.Status == PlanStatus.Impossible)
            return;
        foreach (var left in scope.Left.Where(left => left.Why is WhyLeft.NoRoom or WhyLeft.NotWorthIt))
        {
            var brake = Planner.Add(car, question, left.Job, scope.Chosen);
            var all = Planner.Choose(car, question with { Also = scope.Chosen.Append(left.Job).ToValueList() });
            Assert.Equal(all.Status == PlanStatus.Impossible, brake.Breaches.Count > 0);
            var forced = Planner.Choose(car, question with { Also = [left.Job] });
            Assert.True(brake.Room is not null || forced.Status == PlanStatus.Impossible);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void The_frontier_rises_and_each_point_is_the_best_within_its_limit(int seed)
    {
        var (car, question) = Make(seed);
        var told = new List<FrontierPoint>();
        foreach (var limit in new[] { ScopeLimit.Time, ScopeLimit.Money })
        {
            var points = Planner.Frontier(car, question, limit, 6, new Told(told));
            Assert.Equal(points, told);
            Assert.Equal(points.Select(point => point.Gain).Order(), points.Select(point => point.Gain));
            foreach (var point in points)
            {
                var at = Planner.Choose(car,
                    limit == ScopeLimit.Time ? question with { Hours = new(point.Limit) } : question with { Budget = new(point.Limit) });
                Assert.Equal(at.Gain, point.Gain);
            }

            told.Clear();
        }
    }

    [Fact]
    public void A_search_that_is_ended_tells_nothing_that_is_not_proven()
    {
        var (car, question) = Make(500);
        var scope = Planner.Choose(car, question);
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        var reasons = Planner.Explain(car, scope, ended.Token);
        Assert.Empty(reasons.Costs);
        Assert.Empty(reasons.First);
        Assert.Empty(Planner.Frontier(car, question, ScopeLimit.Time, 5, cancel: ended.Token));
        var early = Planner.Choose(car, question, ended.Token);
        Assert.True(early.Status == PlanStatus.Impossible || (early.Gain <= scope.Gain && early.Bound >= scope.Gain));
    }

    private static (Car Car, ScopeQuestion Question) Make(int seed)
    {
        var car = RandomScope.Make(seed, parts: 30, jobs: 8, CarKind.Realistic);
        return (car, RandomScope.Limited(car, seed));
    }

    private sealed class Told(List<FrontierPoint> told) : IProgress<FrontierPoint>
    {
        public void Report(FrontierPoint value) => told.Add(value);
    }
}
