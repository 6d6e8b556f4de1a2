using System.Text;

namespace Refettle.Bench.Fuzzing;

/// <summary>Changes texts: pieces cut, doubled, moved, mixed with another text; letters and numbers replaced;
/// things that trouble readers put in.</summary>
internal sealed class Mutator(Random random)
{
    private static readonly string[] Trouble =
    [
        "{", "}", "[", "]", "\"", "'", ":", ": ", ",", ";", "\n", "\r\n", "\t", "  ", "- ", "&a ", "*a", "!!x ", "|", ">", "#", "%", "@",
        "?", "---\n", "null", "true", "NaN",
        "-1", "0", "1e9", "1e999", "99999999999999999999", "0.1e-300", "\0", "\uFEFF", "\u202E", "\ud800", "é", "ß", "🔧", "<script>",
        "../", "{p}", "off(", "free()", "$type",
        "\\u0000", "\\", "=", "==", "--", "((((((((", "{{{{{{{{", "[[[[[[[[", "00000000-0000-0000-0000-000000000000",
        "9999-12-31T23:59:59Z",
    ];

    private const int MostChanges = 6;
    private const int LongestPiece = 60;

    public T Pick<T>(IReadOnlyList<T> choices) => choices[random.Next(choices.Count)];

    public bool Toss(double chance) => random.NextDouble() < chance;

    public string Change(string text, string other)
    {
        var changed = new StringBuilder(text);
        for (var left = random.Next(1, MostChanges); left > 0; left--)
            ChangeOnce(changed, other);
        return changed.ToString();
    }

    public byte[] Change(byte[] bytes)
    {
        var changed = (byte[])bytes.Clone();
        for (var left = random.Next(1, MostChanges); left > 0; left--)
            changed[random.Next(changed.Length)] = (byte)random.Next(256);
        return random.Next(4) == 0 ? changed[..random.Next(changed.Length)] : changed;
    }

    private void ChangeOnce(StringBuilder text, string other)
    {
        var at = random.Next(text.Length + 1);
        var length = Math.Min(random.Next(LongestPiece), text.Length - at);
        _ = random.Next(7) switch
        {
            0 => text.Remove(at, length),
            1 => text.Insert(random.Next(text.Length + 1), text.ToString(at, length)),
            2 => text.Insert(at, Piece(other)),
            3 when at < text.Length => text.Remove(at, 1).Insert(at, (char)random.Next(1, 0x250)),
            4 => text.Remove(at, length).Insert(random.Next(text.Length + 1), Trouble[random.Next(Trouble.Length)]),
            5 => text.Insert(at, Trouble[random.Next(Trouble.Length)], random.Next(1, 4)),
            _ => text.Insert(at, Trouble[random.Next(Trouble.Length)]),
        };
    }

    private string Piece(string other)
    {
        var at = random.Next(other.Length + 1);
        return other.Substring(at, Math.Min(random.Next(LongestPiece), other.Length - at));
    }
}
