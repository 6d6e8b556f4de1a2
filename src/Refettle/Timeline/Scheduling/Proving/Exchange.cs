namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What several searches tell each other: the clauses they learn. What is learned of a finish holds for every earlier one too,
/// but not for a later one.</summary>
internal sealed class Exchange(int members)
{
    /// <summary>Of each finish only so many of the latest wait to be heard: an earlier finish may never be wanted.</summary>
    private const int MostWaiting = 20_000;

    private readonly Lock _lock = new();
    private readonly Dictionary<int, Queue<LearnedClause>>[] _unheard =
        [.. Enumerable.Range(0, members).Select(_ => new Dictionary<int, Queue<LearnedClause>>())];

    /// <param name="finish">The finish that was wanted.</param>
    public void Tell(int teller, int finish, ReadOnlySpan<int> statements, int levels)
    {
        if (members == 1)
            return;
        var told = new LearnedClause(statements.ToArray(), levels);
        lock (_lock)
        {
            for (var listener = 0; listener < members; listener++)
            {
                if (listener != teller)
                    Keep(listener, finish, told);
            }
        }
    }

    /// <summary>What the others told since it was asked last and holds for a finish. The rest is kept until an earlier one is
    /// wanted.</summary>
    public IReadOnlyList<LearnedClause> Hear(int listener, int finish)
    {
        lock (_lock)
        {
            var unheard = _unheard[listener];
            var finishes = unheard.Keys.Where(wanted => wanted >= finish).ToList();
            var news = finishes.SelectMany(wanted => unheard[wanted]).ToList();
            finishes.ForEach(wanted => unheard.Remove(wanted));
            return news;
        }
    }

    private void Keep(int listener, int finish, LearnedClause told)
    {
        if (!_unheard[listener].TryGetValue(finish, out var waiting))
            _unheard[listener][finish] = waiting = new();
        waiting.Enqueue(told);
        if (waiting.Count > MostWaiting)
            waiting.Dequeue();
    }
}

/// <param name="Statements">Packed; one at least is true.</param>
/// <param name="Levels">How many levels they were of when it was learned.</param>
internal sealed record LearnedClause(int[] Statements, int Levels);
