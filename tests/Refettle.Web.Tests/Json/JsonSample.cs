using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Serialization.Metadata;

namespace Refettle.Web.Tests.Json;

/// <summary>Makes a JSON text for a type, with every property it has filled in: of a list one item, of an enum its last word. What
/// would hold itself is left out.</summary>
internal static class JsonSample
{
    /// <summary>Texts for what is not made of properties; the first that can be read is taken.</summary>
    private static readonly string[] Leaves =
    [
        "2", "true", "\"2027-01-09T18:30:00Z\"", "\"2027-01-09T18:30:00\"", "\"2027-01-09\"", "\"18:30:00\"",
        "\"0195f000-1234-7abc-8def-0123456789ab\"", "\"off(x)\"", "\"mm\"", "\"x\"", "\"AQI=\"",
    ];

    /// <exception cref="InvalidOperationException">There is no sample for something that it cannot be without.</exception>
    public static JsonNode Of(Type type) => Of(type, []) ?? throw new InvalidOperationException($"No sample of {type}.");

    /// <summary>The sample, and each that lacks one of its properties or has null there: some of these must be refused.</summary>
    public static IEnumerable<JsonNode> Around(Type type)
    {
        var whole = Of(type);
        yield return whole;
        if (whole is not JsonObject filled || !IsObject(type))
            yield break;
        foreach (var name in filled.Select(property => property.Key))
        {
            var without = whole.DeepClone().AsObject();
            without[name] = null;
            yield return without.DeepClone();
            without.Remove(name);
            yield return without;
        }
    }

    private static bool IsObject(Type type) => ExchangeJson.Options.GetTypeInfo(type).Kind == JsonTypeInfoKind.Object;

    private static JsonNode? Of(Type type, Type[] above)
    {
        if (Nullable.GetUnderlyingType(type) is { } inner)
            return Of(inner, above);
        if (type.IsEnum)
            return JsonSerializer.SerializeToNode(Enum.GetValues(type).Cast<object>().Last(), type, ExchangeJson.Options);
        if (above.Contains(type))
            return null;
        var info = ExchangeJson.Options.GetTypeInfo(type);
        return info.Kind switch
        {
            JsonTypeInfoKind.Object => Filled(info, [.. above, type]),
            JsonTypeInfoKind.Dictionary => new JsonObject { ["k"] = Of(info.ElementType!, above) },
            JsonTypeInfoKind.Enumerable => Of(info.ElementType!, above) is { } item ? new JsonArray(item) : new JsonArray(),
            _ when type.IsGenericType => Of(type.GetGenericArguments()[0], above) is { } item ? new JsonArray(item) : new JsonArray(),
            _ => Leaves.Where(text => CanRead(text, type)).Select(text => JsonNode.Parse(text)).FirstOrDefault(),
        };
    }

    private static JsonObject Filled(JsonTypeInfo info, Type[] above) => new(info.Properties
        .Where(property => property.Set is not null || property.AssociatedParameter is not null)
        .Select(property => KeyValuePair.Create(property.Name, Of(property.PropertyType, above)))
        .Where(property => property.Value is not null));

    private static bool CanRead(string text, Type type)
    {
        try
        {
            return JsonSerializer.Deserialize(text, type, ExchangeJson.Options) is not null;
        }
        catch (JsonException)
        {
            return false;
        }
    }
}
