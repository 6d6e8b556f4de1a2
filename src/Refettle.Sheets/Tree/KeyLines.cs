namespace Refettle.Sheets.Tree;

/// <summary>The lines of the keys of a mapping while it is read: looked up in a table only where there are many.</summary>
internal sealed class KeyLines(List<Pair> pairs)
{
    private const int Many = 16;

    private Dictionary<string, int>? _lines;
    private int _entered;

    /// <summary>The line of a key; 0 when it has not been read.</summary>
    public int Of(string key)
    {
        if (pairs.Count < Many)
            return pairs.Find(pair => pair.Key.Text == key)?.Key.Line ?? 0;
        _lines ??= [];
        for (; _entered < pairs.Count; _entered++)
            _lines.Add(pairs[_entered].Key.Text, pairs[_entered].Key.Line);
        return _lines.GetValueOrDefault(key);
    }
}
