namespace Refettle.Cli.Verbs;

/// <summary>Reads words of the form <c>hole=part</c>.</summary>
internal static class Joins
{
    public static Result<Dictionary<string, string>> Read(IEnumerable<string> words)
    {
        var joins = new Dictionary<string, string>();
        foreach (var word in words)
        {
            var cut = word.IndexOf('=', StringComparison.Ordinal);
            if (cut <= 0 || !joins.TryAdd(word[..cut], word[(cut + 1)..]))
                return Result<Dictionary<string, string>>.Bad(
                    new Fault(word, cut <= 0 ? "a hole and a part are missing here" : "this hole is named twice", "Write hole=part."));
        }

        return Result<Dictionary<string, string>>.Good(joins);
    }
}
