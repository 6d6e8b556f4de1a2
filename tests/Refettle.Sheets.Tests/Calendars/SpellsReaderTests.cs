using NodaTime;
using Refettle.Sheets.Calendars;

namespace Refettle.Sheets.Tests.Calendars;

public sealed class SpellsReaderTests
{
    [Theory]
    [InlineData("DTSTART;VALUE=DATE:20260105", "it has no time of day")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Europe/Berlin:20260105T210000\nRRULE:FREQ=MONTHLY",
        "it repeats monthly")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Europe/Berlin:20260105T210000\nRRULE:FREQ=WEEKLY;BYDAY=1MO",
        "its rule has more than days of the week")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Europe/Berlin:20260105T210000\nRRULE:FREQ=WEEKLY;INTERVAL=2;WKST=SU;BYDAY=SU,MO", "its weeks do not begin on Monday")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Europe/Berlin:20260108T210000", "it lasts from")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Euin:20260105T210000",
        "its time zone \"Euin\" is not in the time-zone database")]
    [InlineData("DTSTART;TZID=Europe/Berlin:20260105T183000\nDTEND;TZID=Europe/Berlin:20260105T210000\nRRULE:FREQ=DAILY\nEXDATE;TZID=Nowhere:20260106T183000", "its time zone \"Nowhere\" is not in the time-zone database")]
    public void What_it_cannot_keep_is_refused_with_its_event(string lines, string found)
    {
        var read = SpellsReader.Read(File(lines), null);
        Assert.Contains(found, Assert.Single(read.Faults).Found, StringComparison.Ordinal);
        Assert.StartsWith("event 1 (Garage)", read.Faults[0].Place, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("hello")]
    [InlineData("BEGIN:VCALENDAR\nEND:VCALENDAR")]
    [InlineData("BEGIN:VCALENDAR\nBEGIN:VEVENT\nDTSTART:2026")]
    public void What_is_no_calendar_is_said_to_be_none(string text) =>
        Assert.Equal("calendar", Assert.Single(SpellsReader.Read(text, null).Faults).Place);

    /// <summary>An end of the rule is a moment: RFC 5545 §3.3.10, example "Daily until December 24,
    /// 1997" ends with the 23rd, as 24 December 00:00 UTC is before 9 o'clock of that day in New York.</summary>
    [Fact]
    public void A_rule_ends_at_a_moment()
    {
        var read = SpellsReader.Read(
            File("DTSTART;TZID=America/New_York:19970902T090000\nDTEND;TZID=America/New_York:19970902T100000\nRRULE:FREQ=DAILY;UNTIL=19971224T000000Z"), null);
        Assert.Equal("America/New_York", read.Value.Zone);
        Assert.Equal(new LocalDate(1997, 12, 23), read.Value.Spells[0].Repeats!.Until);
    }

    [Fact]
    public void A_single_event_of_another_zone_comes_over_by_its_moment()
    {
        var read = SpellsReader.Read(File("DTSTART:20260705T160000Z\nDTEND:20260705T180000Z"), "Europe/Berlin");
        Assert.Equal((new LocalTime(18, 0), new LocalTime(20, 0)), (read.Value.Spells[0].From, read.Value.Spells[0].Until));
    }

    private static string File(string lines) =>
        $"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//test//EN\nBEGIN:VEVENT\nUID:a\nDTSTAMP:20260101T000000Z\nSUMMARY:Garage\n{lines}\nEND:VEVENT\nEND:VCALENDAR\n".ReplaceLineEndings("\r\n");
}
