namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>Of which levels the statements of a clause are: those at which they became false. Fewer tell of a clause that will serve
/// again (Audemard and Simon 2009).</summary>
internal sealed class FalseLevels(Bounds bounds)
{
    private readonly List<int> _stamps = [];
    private int _stamp;

    /// <summary>How many levels, without what is false whatever is tried.</summary>
    public int Count(ReadOnlySpan<int> statements)
    {
        (_stamp, var levels) = (_stamp + 1, 0);
        foreach (var packed in statements)
        {
            var level = Of(new(packed));
            while (_stamps.Count <= level)
                _stamps.Add(0);
            if (level > 0 && _stamps[level] != _stamp)
                (_stamps[level], levels) = (_stamp, levels + 1);
        }

        return levels;
    }

    /// <summary>The level at which a statement became false. The one that its clause made true counts for the last level: no other is
    /// asked for.</summary>
    public int Of(Statement statement) => bounds.Holds(statement.Not) ? bounds.LevelOf(statement.Not) : bounds.Level;
}
