namespace Refettle.Sheets.Edits;

/// <summary>One change by hand, written <c>mass=3 kg</c>.</summary>
/// <param name="Adds">Written with a <c>+</c>: added to the list that is there.</param>
public sealed record KeyValue(string Key, string Value, bool Adds)
{
    /// <summary>Reads words of the form <c>key=value</c>; every key once.</summary>
    public static Result<ValueList<KeyValue>> Read(IEnumerable<string> words)
    {
        var read = new List<KeyValue>();
        var faults = new List<Fault>();
        foreach (var word in words)
        {
            var cut = word.IndexOf('=', StringComparison.Ordinal);
            if (cut <= 0)
                faults.Add(new(word, "a key and a value are missing here",
                    "Write key=value, in quotes when it has blanks: \"mass=3 kg\"."));
            else if (read.Any(known => known.Key == word[..cut].Trim()))
                faults.Add(new(word, "this key is given twice", "Give it once."));
            else
                read.Add(Of(word[..cut].Trim(), word[(cut + 1)..].Trim()));
        }

        return faults.Count > 0 ? Result<ValueList<KeyValue>>.Bad(faults) : Result<ValueList<KeyValue>>.Good(read.ToValueList());
    }

    public override string ToString() => $"{Key}={(Adds ? "+" : "")}{Value}";

    private static KeyValue Of(string key, string value) =>
        value.StartsWith('+') ? new(key, value[1..].Trim(), true) : new(key, value, false);
}
