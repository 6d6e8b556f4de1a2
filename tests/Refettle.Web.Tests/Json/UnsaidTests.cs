using System.Runtime.CompilerServices;
using System.Text.Json;
using Refettle.Logbook;

namespace Refettle.Web.Tests.Json;

/// <summary>What goes unsaid in an entry is filled in by whoever reads it: it may be left out only where that is so,
/// and only as long as it stays so.</summary>
public sealed class UnsaidTests
{
    [Fact]
    public void A_plain_part_is_its_name_and_what_its_defaults_do_not_say() => Assert.Equal(
        """{"source":"edit","added":{"parts":[{"id":"tank","name":"Tank","zone":"car","count":1,"out":{}}]},"tied":[]}""",
        Happenings.Encode(new StructureAdded("edit", new() { Parts = [new() { Id = "tank", Name = "Tank" }] }, [])));

    [Fact]
    public void What_is_chosen_is_said_though_it_is_nought() => Assert.Contains(
        "\"perHour\":0", Happenings.Encode(new SettingsChosen(new() { PerHour = new(0) })), StringComparison.Ordinal);

    [Fact]
    public void Each_type_that_entries_are_made_of_reads_the_same()
    {
        var compared = 0;
        foreach (var (type, sample) in PageJson.Logged.SelectMany(type => JsonSample.Around(type).Select(sample => (type, sample))))
        {
            if (Read(sample.ToJsonString(), type) is not { } whole)
                continue;
            Assert.Equal(JsonSerializer.Serialize(whole, type, ExchangeJson.Options),
                JsonSerializer.Serialize(Read(JsonSerializer.Serialize(whole, type, ExchangeJson.Short), type), type,
                    ExchangeJson.Options));
            compared++;
        }

        Assert.True(compared > 500, $"{compared}");
    }

    /// <summary>Old logs lack these. To change one, raise the version of the kinds that hold it.</summary>
    [Fact]
    public void What_old_entries_left_out_is_still_what_it_was()
    {
        var file = Path.Combine(Path.GetDirectoryName(Here())!, "Unsaid.approved.txt");
        if (Environment.GetEnvironmentVariable("REFETTLE_WRITE") is not null)
            File.WriteAllLines(file, Unsaid());
        Assert.Equal(File.ReadAllLines(file), Unsaid());
    }

    private static IEnumerable<string> Unsaid() =>
        from type in PageJson.Logged
        let info = ExchangeJson.Short.GetTypeInfo(type)
        let fresh = info.CreateObject?.Invoke()
        where fresh is not null
        from property in info.Properties
        where property.Get is not null && property.ShouldSerialize?.Invoke(fresh, property.Get(fresh)) == false
        select $"{type.Name}.{property.Name} {JsonSerializer.Serialize(property.Get!(fresh), property.PropertyType, ExchangeJson.Options)}";

    private static object? Read(string text, Type type)
    {
        try
        {
            return JsonSerializer.Deserialize(text, type, ExchangeJson.Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Here([CallerFilePath] string here = "") => here;
}
