namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What several searches for the same proof tell each other: the clauses they learn, which hold for all of them.</summary>
internal sealed class Exchange(int members)
{
    private readonly Lock _lock = new();
    private readonly List<LearnedClause>[] _unheard = [.. Enumerable.Range(0, members).Select(_ => new List<LearnedClause>())];

    public void Tell(int teller, ReadOnlySpan<int> statements, int levels)
    {
        if (members == 1)
            return;
        var told = new LearnedClause(statements.ToArray(), levels);
        lock (_lock)
        {
            for (var listener = 0; listener < members; listener++)
            {
                if (listener != teller)
                    _unheard[listener].Add(told);
            }
        }
    }

    /// <summary>What the others told since it was asked last.</summary>
    public IReadOnlyList<LearnedClause> Hear(int listener)
    {
        lock (_lock)
        {
            var news = _unheard[listener];
            _unheard[listener] = [];
            return news;
        }
    }
}

/// <param name="Statements">Packed; one at least is true.</param>
/// <param name="Levels">How many levels they were of when it was learned.</param>
internal sealed record LearnedClause(int[] Statements, int Levels);
