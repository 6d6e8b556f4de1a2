namespace Refettle.Paper.Pdf;

/// <summary>Lays a table out: columns as wide as what stands in them asks for, the head again on every
/// page, long rows over several pages.</summary>
internal sealed class PdfTable
{
    private const double Gap = 8;
    private const int Sampled = 200;

    private static readonly Lettering Plain = new(8.5);
    private static readonly Lettering Head = new(8.5, bold: true);

    private readonly Pages _pages;
    private readonly IReadOnlyList<string> _columns;
    private readonly double[] _widths;

    public PdfTable(Pages pages, IReadOnlyList<string> columns, IReadOnlyList<IReadOnlyList<string>> sample)
    {
        (_pages, _columns) = (pages, columns);
        var wanted = columns.Select((column, i) => Wanted(column, sample.Take(Sampled).Select(row => row[i]))).ToArray();
        var share = (pages.Width - (Gap * (columns.Count - 1))) / wanted.Sum();
        _widths = [.. wanted.Select(width => width * share)];
    }

    public void Begin()
    {
        _pages.Need(4 * Plain.Line);
        PutHead();
        _pages.Again = PutHead;
    }

    public void End()
    {
        _pages.Again = null;
        _pages.Space(6);
    }

    public void Row(IReadOnlyList<string> cells)
    {
        var lines = cells.Select((cell, i) => Plain.Lines(cell, _widths[i])).ToArray();
        var height = lines.Max(cell => cell.Count);
        _pages.Need(Math.Min(height, 6) * Plain.Line);
        for (var i = 0; i < height; i++)
        {
            _pages.Need(Plain.Line);
            Put(lines, i, Plain);
        }

        _pages.Space(1.5);
        _pages.Rule(0.4, 0.7);
        _pages.Space(2.5);
    }

    private void PutHead()
    {
        var lines = _columns.Select((column, i) => Head.Lines(column, _widths[i])).ToArray();
        for (var i = 0; i < lines.Max(cell => cell.Count); i++)
            Put(lines, i, Head);
        _pages.Space(1.5);
        _pages.Rule(0.8, 0.2);
        _pages.Space(3);
    }

    private void Put(List<string>[] cells, int line, Lettering lettering)
    {
        var x = Pages.Left;
        for (var i = 0; i < cells.Length; i++)
        {
            if (line < cells[i].Count)
                _pages.Put(cells[i][line], lettering, x);
            x += _widths[i] + Gap;
        }

        _pages.Space(lettering.Line);
    }

    /// <summary>Wide enough for its longest word, and more for long texts, up to a limit.</summary>
    private static double Wanted(string column, IEnumerable<string> cells)
    {
        var texts = cells.Append(column).ToList();
        var word = texts.Max(text => text.Split(' ').Max(Head.Width));
        var average = texts.Average(Plain.Width);
        return Math.Clamp(Math.Max(word, average), 24, 260);
    }
}
