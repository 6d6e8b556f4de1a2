using Refettle.Logbook;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Words;

public sealed class LogWordsTests
{
    private static readonly CarLookup _car = new(new()
    {
        Id = "heron",
        Name = "Heron",
        Structure = new()
        {
            Parts = [new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "tow-bar", Name = "Tow bar" }],
            Joints = [new() { Id = "bolts", Name = "Tow bar bolt", Holds = ["tow-bar", "body"], Ways = [] }],
        },
    });

    [Fact]
    public void Stock_is_told_by_the_names_of_things_and_free_words_stay()
    {
        Assert.Equal("sent to Plater (zinc): 24 × bracket bolts, 1 × Tow bar",
            Said(new SentOut("Plater", "zinc", [new("bracket bolts", 24, null, []), new("part tow-bar", 1, null, [])], new(2026, 3, 1),
                null, null)));
        Assert.StartsWith("2 × 77-1 kept for ", Said(new Reserved("joint bolts", "77-1", 2)), StringComparison.Ordinal);
        Assert.DoesNotContain("joint bolts", Said(new Reserved("joint bolts", "77-1", 2)), StringComparison.Ordinal);
    }

    private static string Said(Happening happening)
    {
        using var log =
            new Web.Garage.CarLog("heron", "bench", new Garage.FaultyServer().Api, new Garage.MemoryKeeper(), TimeProvider.System);
        var entry = log.WriteAsync(happening).GetAwaiter().GetResult();
        var line = CarHistory.Of("heron", [entry]).Lines.Single();
        return LogWords.Of(line, _car, new Dictionary<Guid, HistoryLine> { [entry.Id] = line });
    }
}
