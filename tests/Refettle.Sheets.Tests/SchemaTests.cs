using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using CsCheck;
using Json.Schema;
using Refettle.Kits;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Refettle.Sheets.Tests;

/// <summary>The schema for editors against the reader, by a JSON Schema validator that knows neither.</summary>
public sealed class SchemaTests
{
    private const string Head = "refettle: 1\ncar: { name: Test }\n";

    private static readonly JsonSchema Schema =
        JsonSchema.FromText(File.ReadAllText(Path.Combine(Checkout.Root, "docs", "car-sheet.schema.json")));

    [Fact]
    public void The_example_in_the_description_is_valid()
    {
        var text = File.ReadAllText(Path.Combine(Checkout.Root, "docs", "car-sheet.md"));
        var start = text.IndexOf("```yaml", StringComparison.Ordinal) + 8;
        Valid(text[start..text.IndexOf("```", start, StringComparison.Ordinal)]);
    }

    [Fact]
    public void Whatever_is_written_is_valid() => AnySheet.Gen1.Sample(sheet => Valid(SheetWriter.Write(sheet)), iter: 60);

    [Fact]
    public void A_car_of_kits_is_valid()
    {
        var car = Checkout.Shelf.Start;
        foreach (var kit in Checkout.Shelf.Kits)
        {
            var addition = KitAddition.Propose(car, kit, kit.Spots.Count == 0 ? Spot.None : kit.Spots[0]);
            car = addition.IsGood ? car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied) : car;
        }

        Valid(SheetWriter.Write(new() { Name = "Car", Structure = car }));
    }

    [Fact]
    public void Sample_sheets_are_valid()
    {
        foreach (var file in Directory.GetFiles(Checkout.Samples, "*.yaml"))
            Valid(File.ReadAllText(file));
    }

    [Theory]
    [InlineData("parts: { a: { out: { off: [2 min] } } }")]
    [InlineData("parts: { a: { out: { off: 3 } } }")]
    [InlineData("parts: { a: { out: { off: -3 min } } }")]
    [InlineData("parts: { a: { out: { refit: { tool: hands } } } }")]
    [InlineData("parts: { a: { out: { refit: { takes: 3 } } } }")]
    [InlineData("parts: { a: { out: { refit: { takes: 3 min, danger: smoke } } } }")]
    [InlineData("parts: { a: { mass: 3 } }")]
    [InlineData("parts: { a: { mass: 3 lb } }")]
    [InlineData("parts: { a: { naem: x } }")]
    [InlineData("parts: { a: { scarcity: rare } }")]
    [InlineData("parts: { a: { hazards: [water] } }")]
    [InlineData("parts: { A b: {} }")]
    [InlineData("parts: { a: { count: 0 } }")]
    [InlineData("parts: { a: { out: { clear: [gone(b)] } }, b: {} }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bult, holds: [a, b] } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bolt, holds: [a] } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { holds: [a, b] } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: weld, holds: [a, b] } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bolt, holds: [a, b], ways: [] } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bolt, holds: [a, b], tool: x, open: 3 min } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bolt, holds: [a, b], torque: 45 ft } }")]
    [InlineData("parts: { a: {}, b: {} }\njoints: { j: { kind: bolt, holds: [a, b], exposure: 5 } }")]
    [InlineData("states: { s: { name: x } }")]
    [InlineData("spaces: { x: { name: x } }")]
    [InlineData("sub-assemblies: { u: { members: [a] } }\nparts: { a: {} }")]
    [InlineData("parts: { a: { limits: [{ most: 1 mm }] } }")]
    [InlineData("parts: { a: { limits: [{ what: play }] } }")]
    [InlineData("parts: { a: { limits: [{ what: play, most: few }] } }")]
    [InlineData("parts: { a: { limits: [{ what: play, most: '1,5 mm' }] } }")]
    [InlineData("parts: { a: { limits: [{ what: play, most: 1 mm, origin: default }] } }")]
    [InlineData("parts: { a: {} }\nspaces: { x: { closed-by: [a], limits: [{ what: play, moost: 1 mm }] } }")]
    [InlineData("part: {}")]
    public void A_typical_fault_is_found_by_schema_and_reader(string body)
    {
        Assert.False(SheetReader.Read(Head + body, "x").IsGood);
        Assert.False(Evaluate(Head + body).IsValid);
    }

    private static void Valid(string yaml)
    {
        var result = Evaluate(yaml);
        Assert.True(result.IsValid, string.Join('\n', (result.Details ?? []).Where(detail => detail.Errors is not null)
            .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation} {detail.SchemaLocation}: {error.Value}"))
            .Take(20)));
    }

    private static EvaluationResults Evaluate(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        var json = JsonSerializer.SerializeToElement(Json(stream.Documents[0].RootNode));
        return Schema.Evaluate(json, new() { OutputFormat = OutputFormat.List });
    }

    /// <summary>YAML 1.2 core schema: plain scalars are nothing, truth values, numbers, or else text.</summary>
    private static JsonNode? Json(YamlNode node) => node switch
    {
        YamlMappingNode map =>
            new JsonObject(map.Children.Select(pair => KeyValuePair.Create(((YamlScalarNode)pair.Key).Value!, Json(pair.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Json)]),
        YamlScalarNode { Style: ScalarStyle.Plain, Value: "" or "~" or "null" or null } => null,
        YamlScalarNode { Style: ScalarStyle.Plain, Value: "true" or "false" } flag => flag.Value == "true",
        YamlScalarNode { Style: ScalarStyle.Plain } number
            when decimal.TryParse(number.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) => value,
        _ => ((YamlScalarNode)node).Value,
    };
}
