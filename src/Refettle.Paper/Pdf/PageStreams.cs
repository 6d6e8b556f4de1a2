using System.IO.Compression;
using PdfSharp.Pdf;

namespace Refettle.Paper.Pdf;

/// <summary>Compresses what stands on the pages. The library's own compression leaves out the checksum at the end (RFC 1950), which
/// readers forgive and checkers tell.</summary>
internal static class PageStreams
{
    public static void Compress(PdfDocument document)
    {
        document.Options.CompressContentStreams = false;
        foreach (var page in document.Pages)
        {
            foreach (var content in page.Contents)
                Compress(content);
        }
    }

    private static void Compress(PdfDictionary content)
    {
        if (content.Stream is not { } stream || content.Elements.ContainsKey("/Filter"))
            return;
        var packed = new MemoryStream();
        using (var zlib = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
            zlib.Write(stream.Value);
        stream.Value = packed.ToArray();
        content.Elements.SetName("/Filter", "/FlateDecode");
        content.Elements.SetInteger("/Length", stream.Value.Length);
    }
}
