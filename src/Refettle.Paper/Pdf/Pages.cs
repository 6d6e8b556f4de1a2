using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace Refettle.Paper.Pdf;

/// <summary>Pages that fill from top to bottom. Lengths in points.</summary>
internal sealed class Pages(PdfDocument document) : IDisposable
{
    private const double Margin = 45;
    private const double Foot = 28;

    private XGraphics? _drawing;
    private double _at;

    public PdfDocument Document => document;

    public PdfPage Page { get; private set; } = null!;

    public const double Left = Margin;

    public double Width => Page.Width.Point - (2 * Margin);

    private double Bottom => Page.Height.Point - Margin - Foot;

    /// <summary>Done at the top of a page that begins in the middle of something: the head of a table.</summary>
    public Action? Again { get; set; }

    public void Begin()
    {
        _drawing?.Dispose();
        Page = document.AddPage();
        Page.Size = PdfSharp.PageSize.A4;
        _drawing = XGraphics.FromPdfPage(Page);
        _at = Margin;
    }

    /// <summary>Makes sure that so much fits on this page, else begins the next.</summary>
    public void Need(double height)
    {
        if (_at + height <= Bottom || _at <= Margin)
            return;
        Begin();
        Again?.Invoke();
    }

    public void Space(double height) => _at += height;

    /// <summary>A text on the current line.</summary>
    public void Put(string text, Lettering lettering, double x, XBrush? brush = null) =>
        _drawing!.DrawString(text, lettering.Font, brush ?? XBrushes.Black, x, _at + (lettering.Font.Size * 0.95));

    public void Rule(double weight, double gray)
    {
        var level = (int)(255 * gray);
        _drawing!.DrawLine(new XPen(XColor.FromArgb(level, level, level), weight), Left, _at, Left + Width, _at);
    }

    /// <summary>A bar beside what follows.</summary>
    public void Bar(double height) => _drawing!.DrawRectangle(XBrushes.Black, Left - 8, _at, 2.5, height);

    public void Picture(XImage image, double x, double width, double height) => _drawing!.DrawImage(image, x, _at, width, height);

    /// <summary>The foot of every page, once their number is known.</summary>
    public void Number(string text, Lettering lettering)
    {
        _drawing?.Dispose();
        _drawing = null;
        for (var i = 0; i < document.PageCount; i++)
        {
            using var drawing = XGraphics.FromPdfPage(document.Pages[i], XGraphicsPdfPageOptions.Append);
            var number = $"{i + 1} / {document.PageCount}";
            var foot = document.Pages[i].Height.Point - Margin;
            drawing.DrawString(text, lettering.Font, XBrushes.Black, Margin, foot);
            drawing.DrawString(number, lettering.Font, XBrushes.Black, document.Pages[i].Width.Point - Margin - lettering.Width(number),
                foot);
        }
    }

    public void Dispose() => _drawing?.Dispose();
}
