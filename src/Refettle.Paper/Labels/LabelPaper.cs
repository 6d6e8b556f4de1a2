using PdfSharp.Drawing;
using PdfSharp.Pdf;
using QRCoder;
using Refettle.Bags;
using Refettle.Paper.Pdf;

namespace Refettle.Paper.Labels;

/// <summary>Labels as a PDF: the code large, its QR code (ISO/IEC 18004) drawn as rectangles, the text beside it.</summary>
public static class LabelPaper
{
    private const double Inside = 2.2;
    private const double PointsToMillimetre = 72 / 25.4;

    /// <summary>Light modules around the code, as the standard asks for.</summary>
    private const int Quiet = 4;

    /// <param name="skip">Labels of the first sheet that are used already.</param>
    public static void Write(Stream file, IReadOnlyList<BagLabel> labels, LabelSheet sheet, int skip)
    {
        using var document = new PdfDocument();
        document.Info.Title = "Bag labels";
        document.Info.Creator = "Refettle";
        document.Language = "en";
        for (var first = 0; first < labels.Count + skip; first += sheet.OnePaper)
            Page(document, labels, sheet, skip, first);
        PageStreams.Compress(document);
        document.Save(file, closeStream: false);
    }

    private static void Page(PdfDocument document, IReadOnlyList<BagLabel> labels, LabelSheet sheet, int skip, int first)
    {
        var page = document.AddPage();
        (page.Width, page.Height) = (XUnit.FromMillimeter(sheet.PaperWidth), XUnit.FromMillimeter(sheet.PaperHeight));
        using var drawing = XGraphics.FromPdfPage(page);
        for (var place = 0; place < sheet.OnePaper; place++)
        {
            if (first + place - skip is >= 0 and var number && number < labels.Count)
                Label(drawing, labels[number], sheet, place % sheet.Columns, place / sheet.Columns);
        }
    }

    private static void Label(XGraphics drawing, BagLabel label, LabelSheet sheet, int column, int row)
    {
        var (left, top) = (Points(sheet.Left + (column * sheet.Across)), Points(sheet.Top + (row * sheet.Down)));
        var (width, height, inside) = (Points(sheet.Width), Points(sheet.Height), Points(Inside));
        var side = Math.Min(height - (2 * inside), width * 0.42);
        Code(drawing, label.Scan, left + inside, top + inside, side);
        Words(drawing, label, new(left + side + (1.5 * inside), top + inside, width - side - (2.5 * inside), height - (2 * inside)));
    }

    private static void Code(XGraphics drawing, string text, double left, double top, double side)
    {
        using var generator = new QRCodeGenerator();
        using var code = generator.CreateQrCode(text, QRCodeGenerator.ECCLevel.M);
        var rows = code.ModuleMatrix;
        var modules = rows.Count - (2 * Quiet);
        var module = side / (modules + (2 * Quiet));
        for (var y = Quiet; y < Quiet + modules; y++)
        {
            for (var x = Quiet; x < Quiet + modules; x++)
            {
                var run = x;
                while (run < Quiet + modules && rows[y][run])
                    run++;
                if (run > x)
                    drawing.DrawRectangle(XBrushes.Black, left + (x * module), top + (y * module), (run - x) * module, module);
                x = Math.Max(x, run - 1);
            }
        }
    }

    /// <summary>The code, then as many lines as there is room for.</summary>
    private static void Words(XGraphics drawing, BagLabel label, XRect room)
    {
        var head = Head(label.Code, room);
        var text = new Lettering(Math.Clamp(room.Height / 11, 5.5, 9));
        var at = room.Top;
        drawing.DrawString(label.Code, head.Font, XBrushes.Black, room.Left, at + head.Font.Size);
        at += head.Line;
        foreach (var line in label.Lines.SelectMany(line => text.Lines(line, room.Width)))
        {
            if (at + text.Line > room.Bottom)
                return;
            drawing.DrawString(line, text.Font, XBrushes.Black, room.Left, at + text.Font.Size);
            at += text.Line;
        }
    }

    /// <summary>As large as there is room for: without its code nobody can tell whose label it is.</summary>
    private static Lettering Head(string code, XRect room)
    {
        var head = new Lettering(Math.Clamp(room.Height / 4, 10, 26), bold: true);
        return head.Width(code) <= room.Width ? head : new(head.Font.Size * room.Width / head.Width(code), bold: true);
    }

    private static double Points(double millimetres) => millimetres * PointsToMillimetre;
}
