using System.Security.Cryptography;
using System.Text;

namespace Refettle.SaleFile.Sealing;

/// <summary>Writes the record that a sale file carries: header, entries, the list of their hashes, signature. JSON Lines.</summary>
public static class SealedRecord
{
    /// <param name="entries">In the order in which they are numbered.</param>
    /// <param name="hidden">What was left out, in words.</param>
    /// <remarks>The file is closed by <see cref="FileSeal"/> once all of it is written.</remarks>
    public static void Write(
        TextWriter text, string car, DateTimeOffset made, IReadOnlyCollection<GivenEntry> entries, ValueList<string> hidden, ISealKey key)
    {
        var header = RecordLines.Of(new HeaderLine(new(RecordLines.Form, car, made, entries.Count, hidden)));
        Line(text, header);
        foreach (var entry in entries)
            Line(text, RecordLines.Of(entry));
        var manifest = RecordLines.Of(new ManifestLine(Runs(entries)));
        Line(text, manifest);
        Line(text, RecordLines.Of(
            new SignatureLine(new(RecordLines.Algorithm, key.PublicKey, key.Sign(Digest(header, manifest)), RecordLines.Open))));
    }

    internal static byte[] Digest(string header, string manifest) => SHA256.HashData(Encoding.UTF8.GetBytes($"{header}\n{manifest}"));

    internal static ValueList<ManifestRun> Runs(IEnumerable<GivenEntry> entries)
    {
        var runs = new List<(string Device, long From, List<string> Hashes)>();
        foreach (var entry in entries.OrderBy(entry => entry.Device, StringComparer.Ordinal).ThenBy(entry => entry.Sequence))
        {
            if (runs.Count == 0 || runs[^1].Device != entry.Device || entry.Sequence != runs[^1].From + runs[^1].Hashes.Count)
                runs.Add((entry.Device, entry.Sequence, []));
            runs[^1].Hashes.Add(entry.Hash() ?? "");
        }

        return runs.Select(run => new ManifestRun(run.Device, run.From, run.Hashes.ToValueList())).ToValueList();
    }

    private static void Line(TextWriter text, string line)
    {
        text.Write(line);
        text.Write('\n');
    }
}
