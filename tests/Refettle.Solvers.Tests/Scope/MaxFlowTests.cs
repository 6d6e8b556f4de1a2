using Google.OrTools.Graph;
using Refettle.Access;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>Without limits and with one way to everything, the best jobs are a maximum closure: all worth that pays, less a least cut
/// (Picard, Maximal closure of a graph and applications to combinatorial problems, Management Science 22 (1976)). The cut is worked out by
/// the max-flow of OR-Tools.</summary>
public sealed class MaxFlowTests
{
    private const int Cases = 300;

    [Fact]
    public void The_best_jobs_are_a_maximum_closure()
    {
        for (var seed = 0; seed < Cases; seed++)
        {
            var car = Stack(seed);
            var scope = RandomScope.Planner.Choose(car, RandomScope.Question(car));
            Assert.Equal(PlanStatus.Optimal, scope.Status);
            Assert.Equal(Closure(car), scope.Gain);
        }
    }

    /// <summary>Parts that lie on each other, some several deep, each with one joint to the body;
    /// jobs that want some of them free.</summary>
    private static Car Stack(int seed)
    {
        var chance = new Random(seed);
        var parts = Enumerable.Range(0, 4 + chance.Next(20)).ToList();
        return new()
        {
            Id = "stack",
            Name = "Stack",
            Settings = new() { PerHour = new(60) },
            Structure = new()
            {
                Parts = [new() { Id = "body", Name = "Body", Fixed = true },
                    .. parts.Select(part => new Part { Id = $"p{part}", Name = "Part", Out = Upon(part, chance) })],
                Joints = parts.Select(part => new Joint
                {
                    Id = $"j{part}",
                    Holds = [$"p{part}", "body"],
                    Ways = [new() { Id = "do", Tool = "hands", Open = new(chance.Next(1, 40)), Spends = new(chance.Next(3)) }]
                })
                        .ToValueList(),
            },
            Jobs = Enumerable.Range(0, 2 + chance.Next(12)).Select(number => new Job
            {
                Id = $"job{number}",
                Name = "Job",
                Goals = Enumerable.Range(0, chance.Next(3)).Select(_ => Fact.Off($"p{chance.Next(parts.Count)}")).Distinct().ToValueList(),
                With = number > 0 && chance.Next(3) == 0 ? [$"job{chance.Next(number)}"] : [],
                Worth = new(0, chance.Next(200), 400, WorthUnit.Money, Origin.User),
                Work = new(chance.Next(60)),
                Parts = new(chance.Next(40)),
            }).ToValueList(),
        };
    }

    private static WayOut Upon(int part, Random chance) => new()
    {
        Off = new(chance.Next(5)),
        On = new(chance.Next(5)),
        Clear = Enumerable.Range(0, part == 0 ? 0 : chance.Next(3)).Select(_ => Fact.Off($"p{chance.Next(part)}")).Distinct().ToValueList(),
    };

    /// <summary>Nodes are jobs, then parts off with their joint; source 0, sink 1.</summary>
    private static decimal Closure(Car car)
    {
        using var flow = new MaxFlow();
        var all = 0L;
        var parts = car.Structure.Parts.Where(part => !part.Fixed).ToList();
        var nodes = car.Jobs.Select(job => job.Id).Concat(parts.Select(part => part.Id)).ToList();
        int Node(string id) => 2 + nodes.IndexOf(id);
        void Require(string id, string needed) => flow.AddArcWithCapacity(Node(id), Node(needed), long.MaxValue / 4);
        foreach (var job in car.Jobs)
        {
            Pay(job.Id, (long)(job.Worth!.Likely - job.Work.Value - job.Parts.Amount));
            foreach (var needed in job.With.Concat(job.Goals.Select(goal => goal.Subject)))
                Require(job.Id, needed);
        }

        foreach (var (part, joint) in parts.Zip(car.Structure.Joints))
        {
            Pay(part.Id, -(long)(part.Out.Off.Value + part.Out.On.Value + joint.Ways[0].Open.Value + joint.Ways[0].Spends.Amount));
            foreach (var upon in part.Out.Clear)
                Require(part.Id, upon.Subject);
        }

        Assert.Equal(MaxFlow.Status.OPTIMAL, flow.Solve(0, 1));
        return all - flow.OptimalFlow();

        void Pay(string id, long gain)
        {
            all += Math.Max(0, gain);
            flow.AddArcWithCapacity(gain > 0 ? 0 : Node(id), gain > 0 ? Node(id) : 1, Math.Abs(gain));
        }
    }
}
