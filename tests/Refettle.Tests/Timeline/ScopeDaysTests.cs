using NodaTime;
using Refettle.Tests.Logbook;
using Refettle.Timeline.Spells;

namespace Refettle.Tests.Timeline;

public sealed class ScopeDaysTests
{
    /// <summary>Every evening from seven to nine, seen on the first of the month at noon.</summary>
    private static Car Evenings(Handover? meet) => SmallCar.After().Car with
    {
        Calendar = new()
        {
            Spells = [new()
                { Id = "evenings", First = new(2027, 3, 1), From = new(19, 0), Until = new(21, 0), Repeats = new(Rhythm.Daily, 1, []) }],
            Handover = meet,
        },
    };

    private static decimal Hours(Handover? meet, LocalDate? by = null) =>
        ScopeDays.Question(Evenings(meet), Instant.FromUtc(2027, 3, 1, 12, 0), by).Until!.Spells!.Value.Value / 60;

    [Fact]
    public void On_the_last_day_only_what_comes_before_the_hour_of_the_handover_counts()
    {
        Assert.Equal(4, Hours(new(new(2027, 3, 3, 10, 0), "handed over")));
        Assert.Equal(5, Hours(new(new(2027, 3, 3, 20, 0), "handed over")));
        Assert.Equal(6, Hours(new(new(2027, 3, 3, 22, 0), "handed over")));
    }

    [Fact]
    public void A_day_that_is_asked_for_is_whole_unless_it_is_that_of_the_handover()
    {
        Assert.Equal(6, Hours(null, new(2027, 3, 3)));
        Assert.Equal(4, Hours(new(new(2027, 3, 3, 10, 0), "handed over"), new(2027, 3, 3)));
        Assert.Equal(8, Hours(new(new(2027, 3, 3, 10, 0), "handed over"), new(2027, 3, 4)));
    }
}
