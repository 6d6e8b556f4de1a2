namespace Refettle.Stock;

/// <summary>A number that serves where another is asked for.</summary>
/// <param name="Caveat">What is different about it; empty for the same part under another number.</param>
public sealed record Serving(string Number, string Caveat);

/// <summary>Which numbers serve for which.</summary>
/// <param name="numbers">All that are described.</param>
public sealed class Family(IEnumerable<PartNumber> numbers)
{
    private readonly Dictionary<string, PartNumber> _byId = numbers.ToDictionary(number => number.Id);

    /// <summary>The number under which it is bought today.</summary>
    public string Current(string number) => Later(number).Last();

    /// <summary>All that serve for a number, best first: itself, older pieces that serve as well, what superseded
    /// it, substitutes of any of these.</summary>
    public ValueList<Serving> ServingFor(string number)
    {
        var same = new List<string>();
        foreach (var later in Later(number))
            same.AddRange(Earlier(later).Where(one => !same.Contains(one)));
        var ordered = same.Where(one => one == number).Concat(same.Where(one => one != number)).ToList();
        var others = ordered.SelectMany(one => _byId.TryGetValue(one, out var known) ? known.Substitutes : [])
            .Where(other => !ordered.Contains(other.Number)).DistinctBy(other => other.Number)
            .Select(other => new Serving(other.Number,
                other.Caveat.Length > 0 ? other.Caveat : "a substitute: compare it with the old part first"));
        return ordered.Select(one => new Serving(one, "")).Concat(others).ToValueList();
    }

    /// <summary>Whether pieces of one number serve where another is asked for.</summary>
    public bool Serves(string offered, string asked) => ServingFor(asked).Any(serving => serving.Number == offered);

    /// <summary>The number and what superseded it, one after the other; a circle is cut.</summary>
    private List<string> Later(string number)
    {
        var chain = new List<string> { number };
        while (_byId.TryGetValue(chain[^1], out var known) && known.SupersededBy is { } next && !chain.Contains(next))
            chain.Add(next);
        return chain;
    }

    /// <summary>The number and the older ones that serve for it.</summary>
    private List<string> Earlier(string number)
    {
        var found = new List<string> { number };
        for (var i = 0; i < found.Count; i++)
        {
            found.AddRange(_byId.Values.Where(older => older.SupersededBy == found[i] && older.ServesForNew && !found.Contains(older.Id))
                .Select(older => older.Id).Order(StringComparer.Ordinal));
        }

        return found;
    }
}
