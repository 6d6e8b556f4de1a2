using System.Text;
using System.Text.Json;

namespace Refettle.SaleFile.Sealing;

/// <summary>A record as it was found in a file; what cannot be read of it is told, never thrown.</summary>
/// <param name="Lines">Each line between header and manifest, with its entry or null when it is none.</param>
/// <param name="Manifest">Null when it cannot be read.</param>
internal sealed record FoundRecord(
    RecordHeader Header, string HeaderText, IReadOnlyList<(int Line, GivenEntry? Entry)> Lines, ValueList<ManifestRun>? Manifest,
    string ManifestText,
    RecordSignature? Signature, Range FileSignature);

/// <summary>Finds the record in a file: alone, in a page or in a PDF.</summary>
internal static class RecordReader
{
    public static Result<FoundRecord> Find(ReadOnlyMemory<byte> file)
    {
        var begin = file.Span.IndexOf(Encoding.ASCII.GetBytes(RecordLines.Begin));
        if (begin < 0)
            return Bad("it holds no record of a sale file",
                "Take the file as it was made. If another program has saved it anew, ask for the one it was made from.");
        var end = file.Span[begin..].LastIndexOf(Encoding.ASCII.GetBytes(RecordLines.End));
        if (end < 0)
            return Bad("its record breaks off: the signature is missing", "The file was cut off or changed; ask for it again.");
        var lines = Split(file, begin, begin + end);
        return Parsed<HeaderLine>(lines[0].Span)?.SaleFile is not { } header
            ? Bad("the first line of its record cannot be read", "The file was changed, or made by a newer version of the program.")
            : Result<FoundRecord>.Good(Read(header, lines, LastLine(file, begin + end), begin + end));
    }

    private static FoundRecord Read(RecordHeader header, List<ReadOnlyMemory<byte>> lines, ReadOnlyMemory<byte> last, int end)
    {
        var entries = new (int Line, GivenEntry? Entry)[Math.Max(0, lines.Count - 2)];
        Parallel.For(0, entries.Length, i => entries[i] = (i + 2, Parsed<GivenEntry>(lines[i + 1].Span)));
        var manifest = lines.Count > 1 ? lines[^1] : default;
        var signature = Parsed<SignatureLine>(last.Span)?.Signature;
        var place = last.Span.LastIndexOf(Encoding.ASCII.GetBytes(RecordLines.BeforeFile));
        var digits = end + place + RecordLines.BeforeFile.Length;
        return new(header, Text(lines[0]), entries, Parsed<ManifestLine>(manifest.Span)?.Manifest, Text(manifest), signature,
            place >= 0 && signature?.File.Length == RecordLines.SignatureDigits ? digits..(digits + RecordLines.SignatureDigits) : 0..0);
    }

    private static List<ReadOnlyMemory<byte>> Split(ReadOnlyMemory<byte> file, int begin, int end)
    {
        var lines = new List<ReadOnlyMemory<byte>>();
        while (begin < end)
        {
            var length = file.Span[begin..end].IndexOf((byte)'\n');
            var stop = length < 0 ? end : begin + length;
            lines.Add(file[begin..stop]);
            begin = stop + 1;
        }

        return lines;
    }

    private static ReadOnlyMemory<byte> LastLine(ReadOnlyMemory<byte> file, int begin)
    {
        var rest = file[begin..];
        var length = rest.Span.IndexOf((byte)'\n');
        return length < 0 ? rest : rest[..length];
    }

    private static T? Parsed<T>(ReadOnlySpan<byte> line)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(line, RecordLines.Json);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Text(ReadOnlyMemory<byte> line) => Encoding.UTF8.GetString(line.Span);

    private static Result<FoundRecord> Bad(string found, string mend) => Result<FoundRecord>.Bad(new Fault("the file", found, mend));
}
