using NodaTime;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

public sealed class CoatTasksTests
{
    private static readonly CoatingProduct _primer = new()
    {
        Id = "primer",
        Name = "Red primer",
        Recoat = [new(20, 30, 60, false, Origin.Maker)],
        Figures = [new(FigureKind.LeastAir, 8, Origin.Maker), new(FigureKind.MostHumidity, 77, Origin.Maker)]
    };

    private static readonly CoatingProduct _top = new()
    { Id = "top", Name = "Top", Figures = [new(FigureKind.At, 20, Origin.Maker), new(FigureKind.Handle, 12, Origin.Maker)] };

    /// <summary>With products entered their windows, air and cure stand in the tasks, and a coat that is on is done: no figure
    /// of the standard coats is left.</summary>
    [Fact]
    public void The_owners_products_stand_in_for_the_standard_coats()
    {
        var seen = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            if (RandomNetworks.Make(seed, Apart.NotYet) is not { } one
                || one.Network.Tasks.FirstOrDefault(task => task.Kind == TaskKind.Coat) is not { } coat)
                continue;
            var part = coat.Id["coat.".Length..^2];
            var network = NetworkPlanner.Of(one.Question with { Car = With(one.Question.Car, part) });
            var tasks = network.Tasks.ToDictionary(task => task.Id);
            var link = network.Links.Single(one => one.Before == $"coat.{part}.1" && one.After == $"coat.{part}.2");
            Assert.Equal((30 * 60, (int?)(60 * 60)), (link.Least, link.Most));
            Assert.Equal((8, 77), (tasks[$"coat.{part}.1"].Air!.LeastCelsius, tasks[$"coat.{part}.1"].Air!.MostHumidityPercent));
            Assert.Equal(TaskProgress.Done, tasks[$"coat.{part}.1"].Mark?.Progress);
            Assert.Equal(TaskProgress.Done, tasks[$"derust.{part}"].Mark?.Progress);
            Assert.Null(tasks[$"coat.{part}.2"].Mark);
            Assert.Equal(80, tasks[$"coat.{part}.2"].Takes.Value);
            Assert.Equal(12 * 60, tasks[$"wait.cure.{part}"].Takes.Value);
            Assert.Contains(tasks[$"coat.{part}.2"].Cautions, caution => caution.Contains("air-fed", StringComparison.Ordinal));
            seen++;
        }

        Assert.True(seen > 3, $"{seen} seen");
    }

    /// <summary>One of two primer coats is on: what is left is one coat, counted from that one, not two on bare metal.</summary>
    [Fact]
    public void A_stage_that_is_half_on_goes_on_from_its_last_coat()
    {
        var seen = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            if (RandomNetworks.Make(seed, Apart.NotYet) is not { } one
                || one.Network.Tasks.FirstOrDefault(task => task.Kind == TaskKind.Coat) is not { } coat)
                continue;
            var part = coat.Id["coat.".Length..^2];
            var car = With(one.Question.Car, part);
            var network = NetworkPlanner.Of(one.Question with
            { Car = car with { Coating = car.Coating with { Systems = [new("two", "Two", [new("primer", 2), new("top", 2)])] } } });
            var tasks = network.Tasks.ToDictionary(task => task.Id);
            var link = network.Links.Single(one => one.After == $"coat.{part}.1");
            Assert.Equal(($"coat.{part}.1.begun", 30 * 60, (int?)(60 * 60)), (link.Before, link.Least, link.Most));
            Assert.Equal((TaskProgress.Done, new LocalDateTime(2027, 1, 1, 12, 0)),
                (tasks[link.Before].Mark!.Progress, tasks[link.Before].Mark!.At));
            Assert.Equal((40, null), (tasks[$"coat.{part}.1"].Takes.Value, tasks[$"coat.{part}.1"].Mark));
            seen++;
        }

        Assert.True(seen > 3, $"{seen} seen");
    }

    private static Car With(Car car, string part) => car with
    {
        Coating = new()
        {
            Products = [_primer, _top],
            Systems = [new("two", "Two", [new("primer"), new("top", 2)])],
            Parts = [new(part, "two", null)],
            Applied = [new("primer", [part], new LocalDateTime(2027, 1, 1, 12, 0), 1, null, null, null, [])],
        },
    };
}
