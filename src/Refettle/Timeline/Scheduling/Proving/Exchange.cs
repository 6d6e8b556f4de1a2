namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What several searches for the same proof tell each other: the short clauses they learn, which hold for all of them.</summary>
internal sealed class Exchange
{
    private readonly Lock _lock = new();
    private readonly List<(int Teller, int Levels, int[] Statements)> _told = [];

    public void Tell(int teller, ReadOnlySpan<int> statements, int levels)
    {
        lock (_lock)
            _told.Add((teller, levels, statements.ToArray()));
    }

    /// <param name="listener">Is not told again what it told.</param>
    /// <param name="heard">How much was heard before; afterwards, all.</param>
    public IReadOnlyList<(int Teller, int Levels, int[] Statements)> Hear(int listener, ref int heard)
    {
        lock (_lock)
        {
            var news = _told.Skip(heard).Where(told => told.Teller != listener).ToList();
            heard = _told.Count;
            return news;
        }
    }
}
