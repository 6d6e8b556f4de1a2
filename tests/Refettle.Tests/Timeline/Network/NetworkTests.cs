using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

public sealed class NetworkTests
{
    /// <summary>Whatever order the links leave open: the strip works by the rules of access, the refit is
    /// one turned round, and no try is made at a closed gate.</summary>
    [Theory]
    [InlineData(Apart.NotYet)]
    [InlineData(Apart.ByPlan)]
    [InlineData(Apart.AsTold)]
    public void Any_order_that_keeps_the_links_works_on_the_car(Apart apart)
    {
        var (made, tries, hot) = (0, 0, 0);
        for (var seed = 0; seed < 350; seed++)
        {
            if (RandomNetworks.Make(seed, apart) is not { } one)
                continue;
            made++;
            Assert.True(apart == Apart.AsTold || StepsDone.Of(new(one.Question.Car)).Odd.Faults().Count == 0,
                $"seed {seed}: {string.Join("; ", StepsDone.Of(new(one.Question.Car)).Odd.Faults())}");
            tries += one.Network.Tasks.Count(task => task.Kind == TaskKind.Try);
            hot += one.Network.Tasks.Count(task => task.Rungs.Any(rung => (rung.Danger & Danger.Fire) != 0));
            for (var shuffle = 0; shuffle < 3; shuffle++)
            {
                var faults = Ours(NetworkCheck.Of(one.Question.Car, one.Question.Plan.Question, Shuffled(one.Network, new Random(shuffle))),
                    apart);
                Assert.True(faults.Count == 0, $"seed {seed}, shuffle {shuffle}: {string.Join("\n", faults.Take(5))}");
            }
        }

        Assert.True(made > 40 && tries > 100 && hot > 10, $"{made} networks, {tries} tries, {hot} with fire");
    }

    /// <summary>Also where things go back by ways of their own: either what these ask for holds then, or
    /// the task says that it does not.</summary>
    [Theory]
    [InlineData(Apart.NotYet)]
    [InlineData(Apart.ByPlan)]
    [InlineData(Apart.AsTold)]
    public void Ways_back_with_needs_of_their_own_are_kept_to_or_told_of(Apart apart)
    {
        var (own, told) = (0, 0);
        for (var seed = 0; seed < 240; seed++)
        {
            if (RandomNetworks.Make(seed, apart, goesBackOtherwise: true) is not { } one)
                continue;
            var steps = one.Network.Tasks.Where(task => task.Kind == TaskKind.Refit).SelectMany(task => task.Steps)
                .Where(step => step.Tool is "helper and jack" or "cut-off wheel").ToList();
            own += steps.Count;
            told += steps.Count(step => step.Cautions.Any(caution => caution.StartsWith(RefitGate.NotYet, StringComparison.Ordinal)));
            var faults = Ours(NetworkCheck.Of(one.Question.Car, one.Question.Plan.Question, Shuffled(one.Network, new Random(seed))),
                apart);
            Assert.True(faults.Count == 0, $"seed {seed}: {string.Join("\n", faults.Take(5))}");
            Assert.Empty(Ours(Refettle.CloseUp.Refit.RefitCheck.Of(one.Question.Car,
                Refettle.CloseUp.Refit.RefitPlanner.Of(new(one.Question.Car, [], []))), apart));
        }

        Assert.True(own > 60 && told > 10 && own - told > 30, $"{own} of their own, {told} told of");
    }

    /// <summary>Without those of a log that says only half of what was done.</summary>
    private static ValueList<Fault> Ours(ValueList<Fault> faults, Apart apart) =>
        apart == Apart.AsTold
            ? faults.Where(fault => !fault.Found.StartsWith("it is done by the log, and ", StringComparison.Ordinal)).ToValueList()
            : faults;

    /// <summary>An order of the tasks that keeps every link, picked at random.</summary>
    internal static List<WorkTask> Shuffled(TaskNetwork network, Random random)
    {
        var open = network.Tasks.ToDictionary(task => task.Id, task => network.Links.Count(link => link.After == task.Id));
        var ready = network.Tasks.Where(task => open[task.Id] == 0).ToList();
        var tasks = network.Tasks.ToDictionary(task => task.Id);
        var order = new List<WorkTask>();
        while (ready.Count > 0)
        {
            var task = ready[random.Next(ready.Count)];
            ready.Remove(task);
            order.Add(task);
            ready.AddRange(network.Links.Where(link => link.Before == task.Id && --open[link.After] == 0)
                .Select(link => tasks[link.After]));
        }

        Assert.Equal(network.Tasks.Count, order.Count);
        return order;
    }
}
