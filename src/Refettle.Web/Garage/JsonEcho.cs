using System.Text.Json;
using Microsoft.JSInterop;

namespace Refettle.Web.Garage;

/// <summary>Reads a text as one type of the exchange form and writes it again. Trimming can take what reading
/// needs, without a word: in the published pages a test asks this of every type there is.</summary>
public static class JsonEcho
{
    /// <param name="type">Its name, with its assembly's.</param>
    /// <exception cref="JsonException">The text is not of that type.</exception>
    [JSInvokable]
    public static string Echo(string type, string text)
    {
        var read = Type.GetType(type, throwOnError: true)!;
        return JsonSerializer.Serialize(JsonSerializer.Deserialize(text, read, ExchangeJson.Options), read, ExchangeJson.Options);
    }
}
