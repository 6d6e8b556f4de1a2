using Microsoft.Extensions.Time.Testing;
using Refettle.Logbook;
using Refettle.Storage.Copies;

namespace Refettle.Storage.Tests.Copies;

public sealed class DailyCopiesTests
{
    [Fact]
    public void A_day_gets_one_copy_that_restores_to_the_same_log()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        var clock = new FakeTimeProvider(new(1988, 4, 1, 12, 0, 0, TimeSpan.Zero));
        logbook.Write("heron", new Noted("first", null));
        Assert.EndsWith("heron-1988-04-01.db", DailyCopies.Make(logbook, clock).Value, StringComparison.Ordinal);
        logbook.Write("heron", new Noted("second", null));
        Assert.Null(DailyCopies.Make(logbook, clock).Value);
        clock.Advance(TimeSpan.FromDays(1));
        Assert.True(DailyCopies.Make(logbook, clock).IsGood);
        Assert.Equal([2, 1], DailyCopies.Of(shelf.File).Select(copy => Count(shelf, copy.File)));
    }

    [Fact]
    public void Old_copies_go_and_foreign_files_stay()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        var clock = new FakeTimeProvider(new(1988, 4, 1, 12, 0, 0, TimeSpan.Zero));
        DailyCopies.Make(logbook, clock);
        var foreign = Path.Combine(DailyCopies.Folder(shelf.File), "heron-my own.db");
        File.WriteAllText(foreign, "");
        for (var day = 0; day < 30; day++)
        {
            clock.Advance(TimeSpan.FromDays(1));
            Assert.True(DailyCopies.Make(logbook, clock).IsGood);
        }

        Assert.InRange(DailyCopies.Of(shelf.File).Count, 10, 14);
        Assert.True(File.Exists(foreign));
    }

    /// <summary>Nine days of copies by a clock that is a year ahead, then the clock is set: every one of
    /// the last seven right days stays.</summary>
    [Fact]
    public void Copies_of_days_to_come_push_out_no_others()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        var (right, ahead) = (new FakeTimeProvider(new(1988, 4, 1, 12, 0, 0, TimeSpan.Zero)),
            new FakeTimeProvider(new(1989, 4, 1, 12, 0, 0, TimeSpan.Zero)));
        for (var day = 0; day < 18; day++)
        {
            var clock = day < 9 ? ahead : right;
            clock.Advance(TimeSpan.FromDays(1));
            Assert.True(DailyCopies.Make(logbook, clock).IsGood);
        }

        var today = DateOnly.FromDateTime(right.GetLocalNow().DateTime);
        Assert.Subset(DailyCopies.Of(shelf.File).Select(copy => copy.Day).ToHashSet(),
            Enumerable.Range(0, 7).Select(back => today.AddDays(-back)).ToHashSet());
    }

    [Fact]
    public void A_folder_that_cannot_be_written_is_one_clear_fault()
    {
        using var shelf = new Shelf();
        using var logbook = shelf.Open();
        File.WriteAllText(DailyCopies.Folder(shelf.File), "in the way");
        Assert.False(DailyCopies.Make(logbook, TimeProvider.System).IsGood);
    }

    private static int Count(Shelf shelf, string file)
    {
        using var copy = shelf.Open(file);
        return copy.Read("heron").Count();
    }
}
