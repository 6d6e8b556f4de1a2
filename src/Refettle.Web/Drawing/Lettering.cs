namespace Refettle.Web.Drawing;

/// <summary>Breaks a label into lines that fit a box.</summary>
public static class Lettering
{
    private const string More = "…";

    /// <summary>At most so many lines of at most so many letters, broken between words where that is possible;
    /// what is left ends in an ellipsis.</summary>
    public static IReadOnlyList<string> Lines(string text, int letters, int most)
    {
        var lines = new List<string>();
        var rest = text.Trim();
        while (rest.Length > 0 && lines.Count < most)
        {
            var last = lines.Count == most - 1;
            var cut = rest.Length <= letters ? rest.Length : Cut(rest, last ? letters - 1 : letters);
            lines.Add(rest[..cut].TrimEnd() + (last && cut < rest.Length ? More : ""));
            rest = rest[cut..].TrimStart();
        }

        return lines;
    }

    private static int Cut(string text, int letters)
    {
        var blank = text.LastIndexOf(' ', letters);
        return blank > letters / 3 ? blank : letters;
    }
}
