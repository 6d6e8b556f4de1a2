using System.Globalization;
using Xunit.Abstractions;

namespace Refettle.Server.Tests.Network;

/// <summary>Seeded evenings with a bad network. <c>REFETTLE_HISTORIES</c> says how many; <c>REFETTLE_SEED</c> where they begin.</summary>
public sealed class NetworkHistoryTests(ITestOutputHelper output)
{
    [Fact]
    public async Task All_devices_come_to_the_same_log_and_nothing_is_lost_or_doubled()
    {
        var (count, first) = (Number("REFETTLE_HISTORIES", 60), Number("REFETTLE_SEED", 1));
        var fates = new Dictionary<Fate, int>();
        var wrong = new List<string>();
        await using var garage = await TestGarage.OpenAsync(planner: null);
        for (var seed = first; seed < first + count; seed++)
            wrong.AddRange(await NetworkHistory.RunAsync(seed, garage, fates));
        output.WriteLine(
            $"{count} histories; {string.Join(", ", fates.OrderBy(fate => fate.Key).Select(fate => $"{fate.Value} {fate.Key}"))}");
        Assert.Equal(Enum.GetValues<Fate>(), fates.Keys.Order());
        Assert.Empty(wrong);
    }

    private static int Number(string variable, int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : otherwise;
}
