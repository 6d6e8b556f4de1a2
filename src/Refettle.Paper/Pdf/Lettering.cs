using System.Globalization;
using PdfSharp.Drawing;

namespace Refettle.Paper.Pdf;

/// <summary>A font with the widths of its letters, remembered: lines are broken without asking the library for each word.</summary>
internal sealed class Lettering(double size, bool bold = false)
{
    private static readonly XGraphics Scale =
        XGraphics.CreateMeasureContext(new(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);

    private readonly Dictionary<string, double> _widths = [];

    public XFont Font { get; } = Fonts.Of(size, bold);

    /// <summary>From one line to the next, in points.</summary>
    public double Line { get; } = size * 1.3;

    public double Width(string text)
    {
        var width = 0.0;
        for (var i = 0; i < text.Length; i++)
        {
            var letter = char.IsSurrogatePair(text, i) ? text.Substring(i++, 2) : text[i].ToString(CultureInfo.InvariantCulture);
            width += Letter(letter);
        }

        return width;
    }

    /// <summary>The text in lines no wider than this, broken at blanks, or inside a word that is wider alone.</summary>
    public List<string> Lines(string text, double width)
    {
        var lines = new List<string>();
        foreach (var paragraph in text.Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, width)))
            {
                if (line.Length > 0 && Width($"{line} {word}") > width)
                {
                    lines.Add(line);
                    line = "";
                }

                line = line.Length == 0 ? word : $"{line} {word}";
            }

            lines.Add(line);
        }

        return lines;
    }

    private IEnumerable<string> Pieces(string word, double width)
    {
        var from = 0;
        var wide = 0.0;
        for (var i = 0; i < word.Length; i++)
        {
            var letter = char.IsSurrogatePair(word, i) ? word.Substring(i, 2) : word[i].ToString(CultureInfo.InvariantCulture);
            if (wide + Letter(letter) > width && i > from)
            {
                yield return word[from..i];
                (from, wide) = (i, 0);
            }

            wide += Letter(letter);
            i += letter.Length - 1;
        }

        yield return word[from..];
    }

    private double Letter(string letter)
    {
        lock (_widths)
        {
            if (!_widths.TryGetValue(letter, out var width))
                _widths[letter] = width = Scale.MeasureString(letter, Font).Width;
            return width;
        }
    }
}
