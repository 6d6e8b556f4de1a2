using System.Text.Json;
using System.Text.Json.Nodes;
using Refettle.Logbook;
using Refettle.SaleFile.Sealing;

namespace Refettle.SaleFile;

/// <summary>An entry as the sale file shows it.</summary>
/// <param name="Number">Its place in the log, from 1; claims refer to it by this.</param>
/// <param name="Told">What may be seen of what it tells; null when too little is left, or the program does not know its kind.</param>
/// <param name="Given">As it goes into the sealed record.</param>
public sealed record SeenEntry(int Number, Entry Entry, Standing Standing, Happening? Told, GivenEntry Given)
{
    public bool Counts => Standing == Standing.InForce;

    /// <summary>It marks a step that was done, or taken back, already.</summary>
    public bool ChangesNothing { get; private init; }

    /// <summary>It counts, and something was different afterwards.</summary>
    public bool IsWork => Counts && !ChangesNothing;

    /// <summary>The day on the device's clock, universal time.</summary>
    public DateOnly Day => DateOnly.FromDateTime(Entry.At.UtcDateTime);

    public static ValueList<SeenEntry> Of(CarHistory history, Privacy privacy) =>
        history.Lines.Select((line, i) => Of(line, i + 1, privacy)).ToValueList();

    private static SeenEntry Of(HistoryLine line, int number, Privacy privacy)
    {
        var given = GivenEntry.Of(line.Entry, (field, text) => FieldPrivacy.IsHidden(privacy, line.Entry, field, text));
        return new(number, line.Entry, line.Standing, given.Fields is null ? line.Happening : Reread(line.Entry, given.Fields), given)
        { ChangesNothing = line.ChangesNothing };
    }

    /// <summary>What the open fields alone tell.</summary>
    private static Happening? Reread(Entry entry, ValueList<GivenField> fields)
    {
        var open = new JsonObject();
        foreach (var field in fields.Where(field => field.Text is not null))
            open[field.Name] = JsonNode.Parse(field.Text!);
        var read = Happenings.Decode(entry with { Payload = open.ToJsonString(ExchangeJson.Options) });
        return read.IsGood ? read.Value : null;
    }
}
