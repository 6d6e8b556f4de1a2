using System.Text.Json.Nodes;
using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>Work that others did: what left, to whom, when, and what the check on its return found.</summary>
internal static class Outside
{
    private const string NotNamed = "a shop whose name is not given";

    public static ValueList<Section> Of(Sources from)
    {
        var sent = from.Entries.Where(entry => entry.Counts && entry.Entry.Kind == "sent-out").Select(entry => (entry, Told: Seen(entry)))
            .Where(line => line.Told is not null).ToList();
        return sent.Count == 0
            ? []
            : [new("Work by others",
                [new Table(["What", "Work", "By", "Out", "Back"], sent.Select(line => Row(from, line.entry, line.Told!)).ToValueList())])];
    }

    private static Row Row(Sources from, SeenEntry entry, SentOut told)
    {
        var back = from.InForce<CameBack>().Where(line => line.Told.Sent == entry.Entry.Id).ToList();
        var hidden = from.Entries.Where(other => other.Counts && other.Entry.Kind == "came-back" && other.Told is null)
            .ToLookup(other => Sent(other) ?? Guid.Empty);
        string[] words =
        [
            .. back.Select(
                line => $"{line.Told.On:yyyy-MM-dd}: {string.Join(", ", line.Told.Items.Select(item => $"{item.Condition}{(item.Good ? "" : ", not usable")}"))}"),
            .. hidden[entry.Entry.Id]
                .Select(other => Day(other) is { } day ? $"{day}: what came back is blacked out by the owner" : "blacked out by the owner"),
        ];
        // What a blacked-out return brought is not known, so neither is what it left.
        var away = back.Count == 0 || hidden.Count > 0
            ? ""
            : Items(from, Away(told, back.SelectMany(line => line.Told.Items).ToLookup(item => item.What, item => item.Count)));
        return new(
            [
                Items(from, told.Items), told.Work, told.To, $"{told.On:yyyy-MM-dd}",
                words.Length > 0 ? string.Join("; ", words) + EntryWords.With("; still away: ", away.Length > 0 ? away : null)
                    : hidden[Guid.Empty].Any()
                    ? $"not shown; {string.Join(", ", hidden[Guid.Empty].Select(other => $"entry {other.Number}"))}, blacked out by the owner, may tell of it"
                    : "not recorded",
            ],
            [entry.Number, .. back.Select(line => line.Entry.Number).Concat(hidden[entry.Entry.Id].Select(other => other.Number)).Order()]);
    }

    private static IEnumerable<SentItem> Away(SentOut told, ILookup<string, int> back) =>
        told.Items.Select(item => item with { Count = item.Count - back[item.What].Sum() }).Where(item => item.Count > 0);

    private static string Items(Sources from, IEnumerable<SentItem> items) =>
        string.Join(", ",
            items.Select(
                item => $"{(item.Count > 1 ? $"{item.Count} × " : "")}{(Thing.TryParse(item.What, out _) ? from.Names.Of(item.What) : item.What)}"));

    /// <summary>The send-out that a return belongs to; null when that is blacked out too.</summary>
    private static Guid? Sent(SeenEntry entry) => Guid.TryParse(Open(entry, "sent"), out var sent) ? sent : null;

    private static string? Day(SeenEntry entry) => Open(entry, "on");

    private static string? Open(SeenEntry entry, string field) =>
        entry.Given.Fields?.FirstOrDefault(one => one.Name == field)?.Text is { } text ? JsonNode.Parse(text)?.ToString() : null;

    /// <summary>What the open fields tell; who did it may be blacked out.</summary>
    private static SentOut? Seen(SeenEntry entry)
    {
        if (entry.Told is SentOut told)
            return told;
        var open = new JsonObject { ["to"] = NotNamed };
        foreach (var field in entry.Given.Fields?.Where(field => field.Text is not null) ?? [])
            open[field.Name] = JsonNode.Parse(field.Text!);
        return Happenings.Decode(entry.Entry with
        { Payload = open.ToJsonString(ExchangeJson.Options) }) is { IsGood: true, Value: SentOut read } ? read : null;
    }
}
