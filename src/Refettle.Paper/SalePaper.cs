using System.Text;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;

namespace Refettle.Paper;

/// <summary>All that a sale file is laid out from.</summary>
/// <param name="Structure">The car's, for the names of things.</param>
public sealed record SalePaper(
    SaleDocument Document, string Car, Structure Structure, Privacy Privacy, IPictureSource Pictures, ISealKey Key)
{
    /// <summary>Pixels of a picture's longer side in the file.</summary>
    public const int PicturePixels = 1200;

    /// <summary>Told how much is laid out, 0 to 1.</summary>
    public IProgress<double>? Progress { get; init; }

    /// <summary>The sealed record alone, as text.</summary>
    internal void WriteRecord(TextWriter text) =>
        SealedRecord.Write(text, Car, Document.Made, Document.Entries.Select(entry => entry.Given).ToList(), Privacy.LeftOut, Key);

    /// <summary>The record as a file of its own: for programs, and for who wants the entries without the words.</summary>
    public void WriteRecord(Stream file)
    {
        using (var text = Text(file))
            WriteRecord(text);
        FileSeal.Close(file, Key);
    }

    internal static StreamWriter Text(Stream file) => new(file, new UTF8Encoding(false), 1 << 16, leaveOpen: true) { NewLine = "\n" };
}
