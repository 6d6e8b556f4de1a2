using System.Text.Json;
using Refettle.Logbook;

namespace Refettle.SaleFile;

/// <summary>Which fields of which entries a stranger may see. A field that is not named here is shown only when everything is.</summary>
public static class FieldPrivacy
{
    private enum Class
    {
        Open,
        Price,
        Name,
        Hours,

        /// <summary>Open unless it holds a price.</summary>
        Description,

        /// <summary>Open unless it holds minutes.</summary>
        Work,

        /// <summary>Open unless it names a supplier.</summary>
        Place,

        /// <summary>Open where it marks a check at the end: other tasks are named after suppliers too.</summary>
        Mark,

        /// <summary>Words: open unless they look like a price or like somebody's name, number or address.</summary>
        Words,
    }

    private static readonly Dictionary<string, Class> Fields = Read(
        (Class.Open, "car-opened: name year currency"),
        (Class.Open, "structure-added: source tied"),
        (Class.Description, "structure-added: added"),
        (Class.Open, "structure-removed: things"),
        (Class.Open, "step-done: fact way"),
        (Class.Hours, "step-done: took"),
        (Class.Open, "step-reversed: fact"),
        (Class.Hours, "step-reversed: took"),
        (Class.Work, "tried: try"),
        (Class.Open, "stance-taken: stance"),
        (Class.Open, "soundness-judged: part sound"),
        (Class.Open, "joint-tightened: joint how torque checks"),
        (Class.Words, "joint-tightened: instrument"),
        (Class.Name, "joint-tightened: by"),
        (Class.Open, "height-measured: corner height"),
        (Class.Open, "alignment-measured: asFound wheels thrust"),
        (Class.Words, "alignment-measured: instrument"),
        (Class.Name, "alignment-measured: by"),
        (Class.Name, "sent-out: to"),
        (Class.Mark, "task-marked: mark"),
        (Class.Words, "sent-out: work items"),
        (Class.Open, "sent-out: on promised"),
        (Class.Price, "sent-out: price"),
        (Class.Open, "came-back: sent on"),
        (Class.Words, "came-back: items"),
        (Class.Price, "settings-chosen: settings"),
        (Class.Words, "noted: text"),
        (Class.Open, "noted: about"),
        (Class.Open, "declared: topic about because"),
        (Class.Words, "declared: text"),
        (Class.Words, "found: finding"),
        (Class.Words, "limit-set: limit"),
        (Class.Words, "verdict-given: verdict"),
        (Class.Open, "verdict-withdrawn: part"),
        (Class.Words, "baseline-told: answer"),
        (Class.Words, "product-described: product"),
        (Class.Words, "coating-system-described: system"),
        (Class.Open, "coating-chosen: system parts"),
        (Class.Open, "coat-applied: coat"),
        (Class.Words, "kept-bare: spot"),
        (Class.Open, "soak-begun: joint rung since"),
        (Class.Open, "reach-judged: reach"),
        (Class.Open, "missing-accepted: joint rung"),
        (Class.Words, "missing-accepted: why"),
        (Class.Open, "pieces-moved: batch count on"),
        (Class.Place, "pieces-moved: from to"),
        (Class.Words, "pieces-moved: why"),
        (Class.Open, "bag-packed: code for"),
        (Class.Words, "bag-packed: holds place"),
        (Class.Open, "bag-moved: code"),
        (Class.Words, "bag-moved: place"),
        (Class.Open, "bag-emptied: code"),
        (Class.Words, "photo-taken: photo"),
        (Class.Open, "struck: target"),
        (Class.Words, "struck: why"));

    /// <summary>Kinds of entries whose fields are named here.</summary>
    public static ValueList<string> Kinds { get; } = Fields.Keys.Select(field => field.Split('/')[0]).Distinct().ToValueList();

    /// <param name="text">The field's JSON text.</param>
    public static bool IsHidden(Privacy privacy, Entry entry, string field, string text)
    {
        if (privacy.Hidden.Contains(entry.Id))
            return true;
        if (text == "null" || !Fields.TryGetValue($"{entry.Kind}/{field}", out var kind))
            return text != "null" && !ShowsAll(privacy);
        return kind switch
        {
            Class.Price => !privacy.Prices,
            Class.Name => !privacy.Names,
            Class.Hours => !privacy.Hours,
            Class.Description => !privacy.Prices && HoldsNumber(text, "price", "spends"),
            Class.Place => !privacy.Names && text.Contains("\"supplier\"", StringComparison.Ordinal),
            Class.Mark => !ShowsAll(privacy) && !IsOfCheck(text),
            Class.Work => !privacy.Hours && HoldsNumber(text, "took"),
            Class.Words =>
                (!privacy.Prices && PrivateWords.LookLikeMoney(Spoken(text)))
                    || (!privacy.Names && PrivateWords.LookLikePeople(Spoken(text))),
            _ => false,
        };
    }

    private static bool ShowsAll(Privacy privacy) => privacy.Prices && privacy.Names && privacy.Hours;

    private static bool IsOfCheck(string mark)
    {
        using var parsed = JsonDocument.Parse(mark);
        return parsed.RootElement.TryGetProperty("task", out var task)
            && task.GetString()?.StartsWith(Disturbed.Check, StringComparison.Ordinal) == true;
    }

    private static Dictionary<string, Class> Read(params (Class Class, string Line)[] lines) => lines
        .SelectMany(line => line.Line.Split(' ').Skip(1).Select(field => ($"{line.Line.Split(':')[0]}/{field}", line.Class)))
        .ToDictionary(field => field.Item1, field => field.Class);

    private static string Spoken(string text)
    {
        using var parsed = JsonDocument.Parse(text);
        return parsed.RootElement.ValueKind == JsonValueKind.String ? parsed.RootElement.GetString()! : text;
    }

    /// <summary>Whether a number other than 0 stands under one of these names, however deep.</summary>
    private static bool HoldsNumber(string text, params string[] names)
    {
        using var parsed = JsonDocument.Parse(text);
        return Holds(parsed.RootElement);

        bool Holds(JsonElement element) => element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().Any(property => IsNumber(property) || Holds(property.Value)),
            JsonValueKind.Array => element.EnumerateArray().Any(Holds),
            _ => false,
        };

        bool IsNumber(JsonProperty property) =>
            property.Value.ValueKind == JsonValueKind.Number && names.Contains(property.Name) && property.Value.GetDecimal() != 0;
    }
}
