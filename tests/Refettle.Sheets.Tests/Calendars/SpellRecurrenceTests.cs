using CsCheck;
using Ical.Net;
using NodaTime;
using Refettle.Sheets.Calendars;
using Refettle.Timeline;
using Refettle.Timeline.Spells;

namespace Refettle.Sheets.Tests.Calendars;

/// <summary>Expansion of spells against Ical.Net's own expansion of the file that is written for them; local
/// times against NodaTime's zones.</summary>
public sealed class SpellRecurrenceTests
{
    private const string Zone = "Europe/Berlin";

    // Both changes of the clock lie between: 2026-03-29 and 2026-10-25.
    private static readonly LocalDate Begin = new(2026, 1, 1);
    private static readonly LocalDate End = new(2026, 12, 31);

    private static readonly WallClock Clock =
        new(Begin.AtMidnight().InZoneLeniently(DateTimeZoneProviders.Tzdb[Zone]).ToInstant(), DateTimeZoneProviders.Tzdb[Zone]);

    private static readonly Gen<Repetition?> Repetitions =
        Gen.Select(Gen.Bool, Gen.Int[1, 3], Gen.Int[0, 127], Gen.Int[0, 3], Gen.Int[1, 40])
        .Select((weekly, interval, days, end, size) => weekly
            ? new Repetition(Rhythm.Weekly, interval, Days(days), end == 1 ? Begin.PlusDays(size * 7) : null, end == 2 ? size : null)
            : end == 0
            ? null
            : new Repetition(Rhythm.Daily, interval, [], end == 1 ? Begin.PlusDays(size * 7) : null, end == 2 ? size : null));

    // Spells end before midnight or at 5 in the morning: events that a change of the clock cuts short are looked at on their own below.
    private static readonly Gen<Spell> Spells =
        Gen.Select(Gen.Int[0, 300], Gen.Int[12 * 60, 20 * 60], Gen.Int[30, 230], Repetitions, Gen.Int[0, 40].Array[0, 4])
        .Select((first, from, length, again, missed) => Synchronised(new()
        {
            Id = "evening",
            First = Begin.PlusDays(first),
            From = LocalTime.Midnight.PlusMinutes(from),
            Until = LocalTime.Midnight.PlusMinutes(from + length),
            Repeats = again is { Until: { } until } && until < Begin.PlusDays(first + 7)
                ? again with { Until = Begin.PlusDays(first + 7) }
                : again,
            Except = missed.Select(days => Begin.PlusDays(first + days)).Distinct().Order().ToValueList(),
        }));

    [Fact]
    public void Windows_are_the_events_of_the_file_in_both_halves_of_the_year() => Spells.Sample(spell =>
    {
        var windows = SpellWindows.Of([spell], Clock, End).ToList();
        var file = Ical.Net.Calendar.Load(SpellsWriter.Write(new() { TimeZone = Zone, Spells = [spell] }))!;
        var events = file.Events[0]!.GetOccurrences()
            .TakeWhile(one => one.Period.StartTime.AsUtc < Clock.Zone.AtStartOfDay(End.PlusDays(1)).ToDateTimeUtc())
            .Select(one => new Window(Minute(one.Period.StartTime.AsUtc), Minute(one.Period.EffectiveEndTime!.AsUtc))).ToList();
        Assert.Equal(events, windows);
    }, iter: 600);

    [Fact]
    public void What_is_written_is_read_back() => Spells.Sample(spell =>
    {
        var read = SpellsReader.Read(SpellsWriter.Write(new() { TimeZone = Zone, Spells = [spell] }), Zone);
        Assert.True(read.IsGood, string.Join("; ", read.Faults));
        var again = Assert.Single(read.Value.Spells);
        Assert.Equal(SpellWindows.Of([spell], Clock, End), SpellWindows.Of([again], Clock, End));
        Assert.Equal((spell.Id, spell.From, spell.Until), (again.Id, again.From, again.Until));
    }, iter: 300);

    /// <summary>The changes of 2026 in Berlin: 2 o'clock becomes 3 on 29 March, 3 o'clock becomes 2 on 25 October (tz database).</summary>
    [Theory]
    [InlineData(2026, 3, 28, 22, 0, 4, 0, 5 * 60)]
    [InlineData(2026, 10, 24, 22, 0, 4, 0, 7 * 60)]
    [InlineData(2026, 6, 24, 22, 0, 4, 0, 6 * 60)]
    [InlineData(2026, 3, 29, 2, 30, 5, 0, 90)]
    [InlineData(2026, 10, 25, 2, 30, 3, 30, 120)]
    public void A_spell_over_a_change_of_the_clock_lasts_as_long_as_it_really_does(
        int year, int month, int day, int fromHour, int fromMinute, int untilHour, int untilMinute, int minutes)
    {
        var spell = new Spell
        { Id = "night", First = new(year, month, day), From = new(fromHour, fromMinute), Until = new(untilHour, untilMinute) };
        var window = Assert.Single(SpellWindows.Of([spell], Clock, End));
        Assert.Equal(minutes, window.End - window.Start);
    }

    [Fact]
    public void The_clock_on_the_wall_goes_there_and_back() => Gen.Int[0, 525_000].Sample(minute =>
    {
        var local = Clock.At(minute);
        var expected = (Begin.AtMidnight().InZoneStrictly(Clock.Zone) + NodaTime.Duration.FromMinutes(minute)).LocalDateTime;
        Assert.Equal(expected, local);
        if (Clock.Zone.MapLocal(local).Count == 1)
            Assert.Equal(minute, Clock.Minute(local));
    });

    private static int Minute(DateTime utc) => Clock.Minute(Instant.FromDateTimeUtc(utc));

    private static ValueList<IsoDayOfWeek> Days(int bits) =>
        Enumerable.Range(1, 7).Where(day => (bits & (1 << (day - 1))) != 0).Select(day => (IsoDayOfWeek)day).ToValueList();

    /// <summary>Begun on a day of its own rule: what a file means otherwise is not defined (RFC 5545 §3.8.5.3).</summary>
    private static Spell Synchronised(Spell spell) =>
        SpellDays.Of(spell with { Except = [] }, LocalDate.MaxIsoValue).Select(day => (LocalDate?)day).FirstOrDefault() is { } first
            ? spell with { First = first }
            : spell with { Repeats = null };
}
