using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class WrittenTogetherTests
{
    private static readonly DateTimeOffset Start = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void What_was_written_in_one_go_is_found_from_any_of_it_and_nothing_else_is()
    {
        var clock = new TickingClock(Start);
        var writer = new LogWriter("d", clock, new SeededBytes("d"));
        var log = new List<Entry>();
        Write(["before"]);
        Write(["leaks", "need 2", "cut"]);
        Write(["after"]);
        var history = CarHistory.Of("heron", log);
        foreach (var one in log.Skip(1).Take(3))
            Assert.Equal(["leaks", "need 2", "cut"], WrittenTogether.With(history, one.Id).Select(line => ((Noted)line.Happening!).Text));
        Assert.Equal(log[0].Id, Assert.Single(WrittenTogether.With(history, log[0].Id)).Entry.Id);
        Assert.Empty(WrittenTogether.With(history, Guid.Empty));

        void Write(IEnumerable<string> notes) =>
            log.AddRange(writer.Next("heron", LogEnd.Of("d", log), notes.Select(note => new Noted(note, null))));
    }

    /// <summary>Another look at it is a millisecond later.</summary>
    private sealed class TickingClock(DateTimeOffset start) : TimeProvider
    {
        private int _looks;

        public override DateTimeOffset GetUtcNow() => start.AddMilliseconds(_looks++);
    }
}
