using System.Text.Json;

namespace Refettle.Logbook;

/// <summary>A log as text: JSON Lines, one entry a line and a seal as the last. The form for export, import and sending.</summary>
public static class LogLines
{
    /// <summary>The longest line that is read, in characters.</summary>
    public const int MaxLine = 2 * EntryCheck.MaxPayload;

    /// <summary>The most faulty lines that are reported one by one.</summary>
    private const int MostFaults = 20;

    /// <summary>Writes the entries in the order given, then their seal.</summary>
    public static void Write(IEnumerable<Entry> entries, TextWriter text)
    {
        var written = new List<Entry>();
        foreach (var entry in entries)
        {
            Line(text, JsonSerializer.Serialize(entry, ExchangeJson.Options));
            written.Add(entry);
        }

        Line(text, JsonSerializer.Serialize(new SealLine(Seal.Of(written)), ExchangeJson.Options));
    }

    /// <summary>Reads what <see cref="Write"/> wrote. Faults carry the line; where the log does not agree with its seal or its chains, the
    /// result is good with a note for each place: what there is can be taken in, and is worth a look.</summary>
    public static Result<ValueList<Entry>> Read(TextReader text)
    {
        var entries = new List<Entry>();
        var faults = new List<Fault>();
        Seal? seal = null;
        var number = 0;
        while (faults.Count < MostFaults && text.ReadLine() is { } line)
        {
            number++;
            if (line.Length > 0)
                faults.AddRange(Take(line, entries, ref seal).Select(fault => fault with { Line = number, Column = 1 }));
        }

        if (faults.Count > 1 && entries.Count == 0 && seal is null)
            return Result<ValueList<Entry>>.Bad(
                new Fault("file", "it is no log: none of the lines that it begins with is an entry", "Give a file that export-log wrote."));
        if (faults.Count > 0)
            return Result<ValueList<Entry>>.Bad(faults);
        var notes = ChainCheck.Of(entries, seal).Select(found => found.ToFault() with { Severity = Severity.Note });
        return Result<ValueList<Entry>>.Good(entries.ToValueList(), seal is null ? notes.Append(NoSeal) : notes);
    }

    private static Fault NoSeal =>
        new("end of the log", "its last line, the seal, is missing",
            "The text was cut off or put together by hand: compare with where it came from.")
        { Severity = Severity.Note };

    private static ValueList<Fault> Take(string line, List<Entry> entries, ref Seal? seal)
    {
        try
        {
            if (line.Length > MaxLine)
                return [new("line", $"it has {line.Length} characters", $"A line has at most {MaxLine}.")];
            if (line.StartsWith("{\"seal\":", StringComparison.Ordinal))
            {
                seal = Parsed<SealLine>(line).Seal;
                return [];
            }

            var entry = Parsed<Entry>(line);
            entries.Add(entry);
            return EntryCheck.Of(entry);
        }
        catch (JsonException problem)
        {
            return [new("line", $"it is not an entry ({Cause(line, problem)})",
                "Each line holds one entry as JSON, as export-log writes it: export the log again.")];
        }
    }

    /// <summary>Where in the line it is, or what is wrong with it as a whole.</summary>
    private static string Cause(string line, JsonException problem)
    {
        if (problem.Path?.StartsWith("$.", StringComparison.Ordinal) == true)
            return $"its {problem.Path[2..]}";
        try
        {
            using var whole = JsonDocument.Parse(line);
            return "JSON, but something of an entry is missing";
        }
        catch (JsonException)
        {
            return "no JSON";
        }
    }

    private static T Parsed<T>(string line) =>
        JsonSerializer.Deserialize<T>(line, ExchangeJson.Options) ?? throw new JsonException("It is null.");

    /// <summary>Always with a line feed alone: the same log gives the same bytes on every machine.</summary>
    private static void Line(TextWriter text, string line)
    {
        text.Write(line);
        text.Write('\n');
    }

    private sealed record SealLine(Seal Seal);
}
