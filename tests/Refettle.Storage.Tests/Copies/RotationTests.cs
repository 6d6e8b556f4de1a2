using Refettle.Storage.Copies;

namespace Refettle.Storage.Tests.Copies;

public sealed class RotationTests
{
    private static readonly DateOnly Wednesday = new(2026, 11, 25);

    [Fact]
    public void A_garage_used_every_day_keeps_a_week_then_weeks_then_months()
    {
        var kept = Rotation.Kept(Enumerable.Range(0, 800).Select(back => Wednesday.AddDays(-back))).OrderDescending().ToList();
        Assert.Equal(24, kept.Count);
        Assert.Equal(Wednesday.AddDays(-6), kept[6]);
        Assert.All(kept.Skip(8).Take(4), day => Assert.Equal(DayOfWeek.Sunday, day.DayOfWeek));
        Assert.All(kept.Skip(13), day => Assert.Equal(DateTime.DaysInMonth(day.Year, day.Month), day.Day));
    }

    [Fact]
    public void A_week_starts_on_Monday_whatever_the_year() =>
        Assert.Equal(new DateOnly(2027, 1, 3), Rotation.Kept(
            [.. Enumerable.Range(0, 7).Select(day => new DateOnly(2027, 1, 10).AddDays(-day)), new(2026, 12, 28), new(2027, 1, 3)]).Min());

    /// <summary>What was let go yesterday would have been let go today: making a copy each day and thinning each
    /// day keeps a copy of every month.</summary>
    [Fact]
    public void Thinning_day_by_day_never_loses_a_month_of_the_last_year()
    {
        var copies = new HashSet<DateOnly>();
        for (var day = Wednesday.AddDays(-500); day <= Wednesday; day = day.AddDays(1))
            copies = [.. Rotation.Kept(copies.Append(day))];
        Assert.All(Enumerable.Range(0, 12),
            back => Assert.Contains(copies, day => (day.Year * 12) + day.Month == (Wednesday.Year * 12) + Wednesday.Month - back));
        Assert.True(copies.Count <= 24);
    }

    [Fact]
    public void A_garage_used_now_and_then_keeps_its_last_evenings() =>
        Assert.Equal(3, Rotation.Kept([Wednesday, Wednesday.AddDays(-40), Wednesday.AddDays(-400)]).Count);
}
