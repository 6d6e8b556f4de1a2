using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Refettle.Paper.Pdf;

/// <summary>The fonts that go into every file: Liberation Sans, under the SIL Open Font License (Fonts/LICENSE.txt).</summary>
internal sealed class Fonts : IFontResolver
{
    private const string Family = "Liberation Sans";

    /// <summary>Every letter that the font has, not only the Western ones.</summary>
    private static readonly XPdfFontOptions Options = new(PdfFontEncoding.Unicode);

    private static readonly Lock Guard = new();

    private readonly Dictionary<string, byte[]> _faces =
        new[] { "LiberationSans-Regular", "LiberationSans-Bold" }.ToDictionary(face => face, Load);

    /// <summary>A font of a size in points.</summary>
    public static XFont Of(double size, bool bold = false)
    {
        lock (Guard)
        {
            if (GlobalFontSettings.FontResolver is not Fonts)
                GlobalFontSettings.FontResolver = new Fonts();
        }

        return new(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, Options);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool isBold, bool isItalic) =>
        new(isBold ? "LiberationSans-Bold" : "LiberationSans-Regular");

    public byte[]? GetFont(string faceName) => _faces.GetValueOrDefault(faceName);

    private static byte[] Load(string face)
    {
        using var stream = typeof(Fonts).Assembly.GetManifestResourceStream($"{face}.ttf")!;
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
