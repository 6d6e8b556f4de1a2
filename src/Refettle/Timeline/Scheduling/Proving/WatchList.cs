namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>A clause to look at when a statement of it becomes false.</summary>
/// <param name="Other">A statement of the clause: while it is true, there is no need to look at the clause.</param>
internal readonly record struct Watched(int Clause, int Other);

/// <summary>The clauses to look at when one statement becomes false; rewritten in place while they are looked at.</summary>
internal struct WatchList
{
    public Watched[] Watches;
    public int Count;

    public void Add(Watched watch)
    {
        Watches ??= new Watched[4];
        if (Count == Watches.Length)
            Array.Resize(ref Watches, 2 * Count);
        Watches[Count++] = watch;
    }
}
