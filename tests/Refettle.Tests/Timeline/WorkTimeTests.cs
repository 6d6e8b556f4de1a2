using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Tests.Timeline;

/// <summary>Working time against counting it minute by minute.</summary>
public sealed class WorkTimeTests
{
    private static readonly ValueList<Window> Evenings = [new(3, 7), new(10, 11), new(11, 15), new(20, 21), new(30, 38)];

    private static readonly Project OnePerson = new([new("a", 1, [1])], [new("person", 1, Evenings)], []);

    private static readonly WorkTime Time = WorkTime.Of(OnePerson, [0])!;

    private static bool IsOpen(int minute) => Evenings.Any(window => window.Start <= minute && minute < window.End);

    [Fact]
    public void Windows_that_touch_are_one() => Assert.Equal(4, Time.Count);

    [Fact]
    public void Time_worked_counts_the_open_minutes()
    {
        for (var time = 0; time < 50; time++)
            Assert.Equal(Enumerable.Range(0, time).Count(IsOpen), Time.Worked(time));
    }

    [Fact]
    public void Work_begins_with_an_open_minute_and_ends_with_one()
    {
        for (var worked = 0; worked < Time.Total; worked++)
        {
            Assert.Equal(Enumerable.Range(0, 50).Where(IsOpen).ElementAt(worked), Time.Begin(worked));
            Assert.Equal(Enumerable.Range(0, 50).Where(IsOpen).ElementAt(worked) + 1, Time.End(worked + 1));
        }

        Assert.Equal(WorkTime.Never, Time.Begin(Time.Total));
        Assert.Equal(WorkTime.Never, Time.End(Time.Total + 1));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(8)]
    public void What_is_unbroken_fits_into_one_window(int duration)
    {
        bool Fits(int start) => Enumerable.Range(start, duration).All(IsOpen);
        for (var time = 0; time < 45; time++)
        {
            Assert.Equal(Enumerable.Range(time, 60).Where(Fits).Append(WorkTime.Never).First(), Time.UnbrokenFrom(time, duration));
            Assert.Equal(Enumerable.Range(0, Math.Max(0, time - duration + 1)).Where(Fits).Prepend(-WorkTime.Never).Last(),
                Time.UnbrokenUntil(time, duration));
        }
    }

    [Fact]
    public void Resources_together_are_open_when_each_is()
    {
        var project = OnePerson with
        { Resources = [new("person", 1, Evenings), new("daylight", 1, [new(0, 5), new(12, 33)]), new("bench", 1)] };
        var both = WorkTime.Of(project, [0, 1, 2])!;
        Assert.Equal([new(3, 5), new(12, 15), new(20, 21), new(30, 33)], Enumerable.Range(0, both.Count).Select(k => both[k]));
        Assert.Null(WorkTime.Of(project, [2]));
    }

    [Fact]
    public void Running_backwards_twice_changes_nothing()
    {
        var back = Time.Mirrored(0);
        for (var worked = 1; worked < Time.Total; worked++)
            Assert.Equal(Time.Begin(worked), -back.End(Time.Total - worked));
    }
}
