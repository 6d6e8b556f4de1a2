using System.Text.Json;
using Refettle.Logbook;

namespace Refettle.Tests.Stock;

/// <summary>Counts the shelf a second time, from the JSON text of the entries alone, with none of the
/// program's own places and postings.</summary>
internal sealed class Recount
{
    public SortedDictionary<string, int> In { get; } = [];

    public SortedDictionary<string, int> Out { get; } = [];

    public static Recount Of(IEnumerable<CarHistory> histories)
    {
        var count = new Recount();
        var lines = histories.SelectMany(history => history.Lines).Where(line => line.Standing == Standing.InForce).ToList();
        var sent = lines.Where(line => line.Entry.Kind == "sent-out").ToDictionary(line => line.Entry.Id, line => Json(line.Entry));
        foreach (var line in lines)
            count.Take(line.Entry.Kind, Json(line.Entry), sent);
        return count;
    }

    public int OnHand(string number) => In.GetValueOrDefault(number) - Out.GetValueOrDefault(number);

    private void Take(string kind, JsonElement told, Dictionary<Guid, JsonElement> sent)
    {
        switch (kind)
        {
            case "arrived":
                Each(told, "lines", In);
                break;
            case "sent-back":
                Each(told, "lines", Out);
                break;
            case "kit-opened":
                Add(Out, told.GetProperty("kit"), told);
                Each(told, "contents", In);
                break;
            case "made-up":
                Add(In, told.GetProperty("made"), told);
                Each(told, "taken", Out);
                break;
            case "pieces-moved":
                if (told.GetProperty("to").GetProperty("kind").GetString() == "shelf")
                    Add(In, told.GetProperty("batch"), told);
                if (told.GetProperty("from").GetProperty("kind").GetString() == "shelf")
                    Add(Out, told.GetProperty("batch"), told);
                break;
            case "sent-out":
                foreach (var item in told.GetProperty("items").EnumerateArray().Where(item => item.TryGetProperty("batch", out _)))
                    Add(Out, item.GetProperty("batch"), item);
                break;
            case "came-back" when sent.TryGetValue(told.GetProperty("sent").GetGuid(), out var manifest):
                foreach (var item in told.GetProperty("items").EnumerateArray().Where(item => item.GetProperty("good").GetBoolean()))
                    Back(item, manifest);
                break;
        }
    }

    private void Back(JsonElement item, JsonElement manifest)
    {
        foreach (var left in manifest.GetProperty("items").EnumerateArray())
        {
            if (left.GetProperty("what").GetString() == item.GetProperty("what").GetString() && left.TryGetProperty("batch", out var batch))
                Add(In, batch, item);
        }
    }

    private static void Each(JsonElement told, string list, SortedDictionary<string, int> side)
    {
        foreach (var line in told.GetProperty(list).EnumerateArray())
            Add(side, line.GetProperty("batch"), line);
    }

    private static void Add(SortedDictionary<string, int> side, JsonElement batch, JsonElement counted)
    {
        var number = batch.GetProperty("number").GetString()!;
        side[number] = side.GetValueOrDefault(number) + counted.GetProperty("count").GetInt32();
    }

    private static JsonElement Json(Entry entry) => JsonDocument.Parse(entry.Payload).RootElement;
}
