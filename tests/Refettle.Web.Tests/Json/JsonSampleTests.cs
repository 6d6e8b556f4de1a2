using System.Globalization;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Json;

/// <summary>What the trimmed pages are asked with is worth asking: nearly all of it can be read, and comes back the same.</summary>
public sealed class JsonSampleTests
{
    [Fact]
    public void Each_type_has_a_sample_that_is_read_and_written_as_it_was()
    {
        Assert.True(PageJson.Types.Count > 200);
        foreach (var type in PageJson.Types)
        {
            var text = JsonSample.Of(type).ToJsonString(ExchangeJson.Options);
            var back = JsonEcho.Echo(type.AssemblyQualifiedName!, text);
            Assert.Equal(back, JsonEcho.Echo(type.AssemblyQualifiedName!, back));
        }
    }

    /// <summary>What a type is made of, by reflection and not by what the exchange form knows of it: each is in the sample, is read with
    /// another value than it has by itself, and is written as it was.</summary>
    [Fact]
    public void Each_property_that_can_be_set_comes_through()
    {
        var (properties, lost) = (0, new List<string>());
        foreach (var type in PageJson.Types
            .Where(type => JsonSample.Of(type) is JsonObject && !type.IsAbstract
                && !typeof(System.Collections.IEnumerable).IsAssignableFrom(type)))
        {
            var sample = JsonSample.Of(type).AsObject();
            var read = JsonSerializer.Deserialize(sample.ToJsonString(ExchangeJson.Options), type, ExchangeJson.Options);
            var back = JsonSerializer.SerializeToNode(read, type, ExchangeJson.Options)!.AsObject();
            foreach (var property in Settable(type))
            {
                properties++;
                var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
                var nothing = property.PropertyType.IsValueType ? Activator.CreateInstance(property.PropertyType) : null;
                if (!sample.TryGetPropertyValue(name, out var given) || !back.TryGetPropertyValue(name, out var written)
                    || !Holds(written, given) || Equals(property.GetValue(read), nothing))
                    lost.Add($"{type.Name}.{name}");
            }
        }

        Assert.True(lost.Count == 0, string.Join(", ", lost));
        Assert.True(properties > 500, $"{properties}");
    }

    /// <summary>All that was given is written, beside what is worked out; a moment as the same moment.</summary>
    private static bool Holds(JsonNode? written, JsonNode? given) => (written, given) switch
    {
        (JsonObject all, JsonObject some) =>
            some.All(property => all.TryGetPropertyValue(property.Key, out var one) && Holds(one, property.Value)),
        (JsonArray all, JsonArray some) => all.Count == some.Count && all.Zip(some).All(pair => Holds(pair.First, pair.Second)),
        _ => JsonNode.DeepEquals(written, given)
            || (DateTimeOffset.TryParse(written?.ToString(), CultureInfo.InvariantCulture, out var one)
                && DateTimeOffset.TryParse(given?.ToString(), CultureInfo.InvariantCulture, out var other) && one == other),
    };

    private static IEnumerable<PropertyInfo> Settable(Type type) =>
        type.GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0
        && (property.SetMethod is { IsPublic: true }
            || type.GetConstructors().Any(made => made.GetParameters().Any(parameter => parameter.Name == property.Name))));

    [Fact]
    public void Some_of_those_around_it_are_refused()
    {
        var refused = PageJson.Types.SelectMany(type => JsonSample.Around(type).Select(sample => (type, sample)))
            .Count(ask => IsRefused(ask.type, ask.sample.ToJsonString(ExchangeJson.Options)));
        Assert.True(refused > 500, $"{refused}");
    }

    private static bool IsRefused(Type type, string text)
    {
        try
        {
            return JsonEcho.Echo(type.AssemblyQualifiedName!, text).Length < 0;
        }
        catch (JsonException)
        {
            return true;
        }
    }
}
