using System.Net;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;

namespace Refettle.Paper.Html;

/// <summary>The sale file as one page that needs no network and no script: words, pictures and the sealed record in one file.</summary>
public static class HtmlPaper
{
    /// <summary>Letters of a picture that are written at a time: four for three bytes.</summary>
    private const int Coded = 1 << 14;

    private const string Policy = "default-src 'none'; img-src data:; style-src 'unsafe-inline'";

    /// <param name="file">Can be sought in; it is left open.</param>
    public static void Write(Stream file, SalePaper paper)
    {
        using (var text = SalePaper.Text(file))
            new Page(text, paper).Write();
        FileSeal.Close(file, paper.Key);
    }

    private sealed class Page(TextWriter text, SalePaper paper)
    {
        private readonly SaleDocument _document = paper.Document;
        private readonly PicturesAhead _pictures = new(paper);
        private readonly char[] _coded = new char[Coded];

        public void Write()
        {
            Head();
            for (var i = 0; i < _document.Sections.Count; i++)
                Section(_document.Sections[i], i);
            Log();
            text.WriteLine("</main>\n<script type=\"application/jsonl\" id=\"record\">");
            paper.WriteRecord(text);
            text.WriteLine("</script>\n</body>\n</html>");
            paper.Progress?.Report(1);
        }

        private void Head()
        {
            text.WriteLine($"<!DOCTYPE html>\n<html lang=\"{SaleDocument.Language}\">\n<head>\n<meta charset=\"utf-8\">");
            text.WriteLine(
                $"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"{Policy}\">");
            text.WriteLine(
                $"<title>{Safe(_document.Title)}: {Safe(_document.Subtitle)}</title>\n<style>\n{Style()}</style>\n</head>\n<body>");
            text.WriteLine(
                $"<header><h1>{Safe(_document.Title)}</h1><p class=\"soft\">{Safe(_document.Subtitle)}. Made {_document.Made.UtcDateTime:yyyy-MM-dd HH:mm} UTC. Key {_document.Fingerprint}.</p></header>");
            text.WriteLine("<nav aria-label=\"Contents\"><ol>");
            for (var i = 0; i < _document.Sections.Count; i++)
                text.WriteLine($"<li><a href=\"#s{i + 1}\">{Safe(_document.Sections[i].Title)}</a></li>");
            text.WriteLine("<li><a href=\"#log\">All entries</a></li></ol></nav>\n<main>");
        }

        private void Section(Section section, int index)
        {
            text.WriteLine($"<section id=\"s{index + 1}\"><h2>{Safe(section.Title)}</h2>");
            foreach (var block in section.Blocks)
                Block(block);
            text.WriteLine("</section>");
        }

        private void Block(Block block)
        {
            if (block is Said said)
                text.WriteLine($"<p class=\"{said.Backing.ToString().ToLowerInvariant()}\">{Safe(said.Text)}{Rests(said.Entries)}</p>");
            else if (block is Table table)
                Table(table);
            else if (block is Pictures pictures)
                Pictures(pictures);
        }

        private void Table(Table table)
        {
            text.WriteLine("<div class=\"wide\"><table><thead><tr>");
            foreach (var column in table.Columns.Append("Entries"))
                text.Write($"<th scope=\"col\">{Safe(column)}</th>");
            text.WriteLine("</tr></thead><tbody>");
            foreach (var row in table.Rows)
                text.WriteLine(
                    $"<tr>{string.Concat(row.Cells.Select(cell => $"<td>{Safe(cell)}</td>"))}<td class=\"rests\">{Links(row.Entries)}</td></tr>");
            text.WriteLine("</tbody></table></div>");
        }

        private void Pictures(Pictures pictures)
        {
            text.WriteLine("<div class=\"pictures\">");
            foreach (var (picture, bytes) in _pictures.Of(pictures))
                Picture(picture, bytes);
            text.WriteLine("</div>");
        }

        private void Picture(Picture picture, byte[]? bytes)
        {
            var caption = $"{Safe(picture.Caption)} {Rests([picture.Entry])}";
            if (bytes is null)
            {
                text.WriteLine(
                    $"<figure><figcaption>{caption} The picture is not on the machine that made this file.</figcaption></figure>");
                return;
            }

            text.Write($"<figure><img alt=\"{Safe(picture.Caption)}\" width=\"{picture.Width}\" height=\"{picture.Height}\" loading=\"lazy\" src=\"data:image/jpeg;base64,");
            Code(bytes);
            text.WriteLine($"\"><figcaption>{caption}</figcaption></figure>");
        }

        private void Code(ReadOnlySpan<byte> bytes)
        {
            while (bytes.Length > 0)
            {
                var piece = bytes[..Math.Min(bytes.Length, Coded / 4 * 3)];
                Convert.TryToBase64Chars(piece, _coded, out var written);
                text.Write(_coded, 0, written);
                bytes = bytes[piece.Length..];
            }
        }

        private void Log()
        {
            text.WriteLine("<section id=\"log\"><h2>All entries</h2>");
            text.WriteLine(
                "<p>The log's own words on the day, in order. They are not statements to a buyer. Struck entries are kept and shown as struck.</p>");
            text.WriteLine(
                "<div class=\"wide\"><table><thead><tr><th scope=\"col\">No</th><th scope=\"col\">When (UTC)</th><th scope=\"col\">Device</th><th scope=\"col\">What</th></tr></thead><tbody>");
            foreach (var (entry, says) in SaleFileWriter.Log(_document, paper.Structure))
                text.WriteLine(
                    $"<tr id=\"e{entry.Number}\"{(entry.Counts ? "" : " class=\"void\"")}><td>{entry.Number}</td><td>{entry.Entry.At.UtcDateTime:yyyy-MM-dd HH:mm}</td><td>{Safe(entry.Entry.Device)}</td><td>{Safe(says)}</td></tr>");
            text.WriteLine("</tbody></table></div></section>");
        }

        private static string Rests(ValueList<int> entries) =>
            entries.Count == 0 ? "" : $" <span class=\"rests\">[{Links(entries)}]</span>";

        private static string Links(ValueList<int> entries)
        {
            var (shown, more) = EntryNumbers.Shortened(entries);
            return string.Join(", ", shown.Select(range => $"<a href=\"#e{range.First}\">{EntryNumbers.Text(range)}</a>"))
                + (more > 0 ? $" and {more} more" : "");
        }
    }

    private static string Style()
    {
        using var reader = new StreamReader(typeof(HtmlPaper).Assembly.GetManifestResourceStream("page.css")!);
        return reader.ReadToEnd();
    }

    private static string Safe(string text) => WebUtility.HtmlEncode(text);
}
