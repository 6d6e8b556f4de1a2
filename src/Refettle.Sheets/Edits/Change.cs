namespace Refettle.Sheets.Edits;

/// <summary>How one key of a thing is changed: the old thing, the thing as read from the given keys, whether a list is added to.</summary>
internal delegate T Change<T>(T old, T given, bool adds);

/// <summary>The keys of one kind of thing.</summary>
/// <param name="Keys">Every key with its change.</param>
/// <param name="Lists">The keys that hold lists.</param>
internal sealed record ChangeTable<T>(Dictionary<string, Change<T>> Keys, string[] Lists)
{
    /// <summary>Faults for keys that the thing does not have, and for lists added to what is no list.</summary>
    public IEnumerable<Fault> Faults(string place, IEnumerable<KeyValue> values)
    {
        foreach (var value in values)
        {
            if (!Keys.ContainsKey(value.Key))
                yield return new(place, $"it has no key {value.Key}",
                    NearNames.Ask(value.Key, Keys.Keys, $"Known are {string.Join(", ", Keys.Keys)}."));
            else if (value.Adds && !Lists.Contains(value.Key))
                yield return new(place, $"{value.Key} holds one value, so nothing can be added to it",
                    $"Write {value.Key}=… without the +.");
        }
    }

    public T Apply(T old, T given, IEnumerable<KeyValue> values) =>
        values.Aggregate(old, (thing, value) => Keys[value.Key](thing, given, value.Adds));
}

/// <summary>Lists that are replaced or added to.</summary>
internal static class Lists
{
    public static ValueList<T> Of<T>(ValueList<T> old, ValueList<T> given, bool adds) => adds ? old.Union(given).ToValueList() : given;

    public static Danger? Of(Danger? old, Danger? given, bool adds) => !adds || old is null ? given : given is null ? old : old | given;
}
