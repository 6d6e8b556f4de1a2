using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Refettle.SaleFile;

namespace Refettle.Paper.Pdf;

/// <summary>Lays a sale file out on pages.</summary>
internal sealed class Layout(PdfDocument document, SalePaper paper) : IDisposable
{
    private const int EntriesToABookmark = 100;
    private const double PictureHeight = 190;
    private const double PictureGap = 14;

    private static readonly Lettering Title = new(20, bold: true);
    private static readonly Lettering Heading = new(13, bold: true);
    private static readonly Lettering Text = new(10);
    private static readonly Lettering Small = new(8);

    private readonly Pages _pages = new(document);
    private readonly PicturesAhead _pictures = new(paper);

    public void Write()
    {
        _pages.Begin();
        var sale = paper.Document;
        Paragraph(sale.Title, Title, 2);
        Paragraph($"{sale.Subtitle}. Made {sale.Made.UtcDateTime:yyyy-MM-dd HH:mm} UTC. Key {sale.Fingerprint}.", Small, 8);
        foreach (var section in sale.Sections)
            Section(section);
        Log();
        _pages.Number($"{sale.Title} · made {sale.Made.UtcDateTime:yyyy-MM-dd}", Small);
    }

    public void Dispose() => _pages.Dispose();

    private void Section(Section section)
    {
        Mark(section.Title);
        foreach (var block in section.Blocks)
            Block(block);
    }

    private PdfOutline Mark(string title)
    {
        _pages.Need(Heading.Line + (4 * Text.Line));
        _pages.Space(8);
        var mark = document.Outlines.Add(title, _pages.Page, opened: false);
        Paragraph(title, Heading, 4);
        return mark;
    }

    private void Block(Block block)
    {
        switch (block)
        {
            case Said said:
                Said(said);
                break;
            case Table table:
                var rows = table.Rows.Select(row => (IReadOnlyList<string>)[.. row.Cells, EntryNumbers.Text(row.Entries)]).ToList();
                Table([.. table.Columns, "Entries"], rows);
                break;
            case Pictures pictures:
                Pictures(pictures);
                break;
        }
    }

    private void Said(Said said)
    {
        var lines = Text.Lines(said.Text + (said.Entries.Count == 0 ? "" : $" [{EntryNumbers.Text(said.Entries)}]"), _pages.Width);
        foreach (var line in lines)
        {
            _pages.Need(Text.Line);
            if (said.Backing == Backing.Warns)
                _pages.Bar(Text.Line);
            _pages.Put(line, Text, Pages.Left);
            _pages.Space(Text.Line);
        }

        _pages.Space(5);
    }

    private void Paragraph(string text, Lettering lettering, double after)
    {
        foreach (var line in lettering.Lines(text, _pages.Width))
        {
            _pages.Need(lettering.Line);
            _pages.Put(line, lettering, Pages.Left);
            _pages.Space(lettering.Line);
        }

        _pages.Space(after);
    }

    private void Table(IReadOnlyList<string> columns, List<IReadOnlyList<string>> rows)
    {
        var table = new PdfTable(_pages, columns, rows);
        table.Begin();
        foreach (var row in rows)
            table.Row(row);
        table.End();
    }

    /// <summary>Two beside each other.</summary>
    private void Pictures(Pictures pictures)
    {
        foreach (var pair in _pictures.Of(pictures).Chunk(2))
        {
            var width = (_pages.Width - PictureGap) / 2;
            var captions = pair.Select(one => Small.Lines($"{one.Picture.Caption} [{one.Picture.Entry}]", width)).ToArray();
            var below = captions.Max(lines => lines.Count) * Small.Line;
            _pages.Need(PictureHeight + below);
            for (var i = 0; i < pair.Length; i++)
                Picture(pair[i].Bytes, Pages.Left + (i * (width + PictureGap)), width);
            _pages.Space(PictureHeight + 3);
            Captions(captions, width);
            _pages.Space(6);
        }
    }

    private void Captions(List<string>[] captions, double width)
    {
        for (var line = 0; line < captions.Max(lines => lines.Count); line++)
        {
            for (var i = 0; i < captions.Length; i++)
            {
                if (line < captions[i].Count)
                    _pages.Put(captions[i][line], Small, Pages.Left + (i * (width + PictureGap)));
            }

            _pages.Space(Small.Line);
        }
    }

    private void Picture(byte[]? bytes, double x, double width)
    {
        if (bytes is null)
        {
            _pages.Put("The picture is not on the machine that made this file.", Small, x);
            return;
        }

        using var image = XImage.FromStream(new MemoryStream(bytes, 0, bytes.Length, writable: false, publiclyVisible: true));
        var scale = Math.Min(width / image.PixelWidth, PictureHeight / image.PixelHeight);
        _pages.Picture(image, x, image.PixelWidth * scale, image.PixelHeight * scale);
    }

    private void Log()
    {
        var mark = Mark("All entries");
        Paragraph("The log's own words on the day, in order. They are not statements to a buyer. Struck entries are kept and shown as struck.", Text, 4);
        var rows = SaleFileWriter.Log(paper.Document, paper.Structure).Select(line => (IReadOnlyList<string>)
            [$"{line.Entry.Number}", $"{line.Entry.Entry.At.UtcDateTime:yyyy-MM-dd HH:mm}", line.Entry.Entry.Device,
                line.Says + (line.Entry.Counts ? "" : " (struck or not applied)")]).ToList();
        var table = new PdfTable(_pages, ["No", "When (UTC)", "Device", "What"], rows);
        table.Begin();
        for (var i = 0; i < rows.Count; i++)
        {
            table.Row(rows[i]);
            if (rows.Count > EntriesToABookmark && i % EntriesToABookmark == 0)
                mark.Outlines.Add($"Entries from {i + 1}", _pages.Page);
        }

        table.End();
    }
}
