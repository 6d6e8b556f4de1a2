using System.Text.Json;

namespace Refettle.Logbook;

/// <summary>Whether an entry that came from outside has the form of one. What it tells is not judged:
/// it may be from a newer version.</summary>
public static class EntryCheck
{
    /// <summary>The longest payload that is accepted, in characters.</summary>
    public const int MaxPayload = 32_000_000;

    /// <summary>The most other entries that one may name as earlier.</summary>
    public const int MaxAfter = 1_000;

    private const int HashDigits = 64;

    public static ValueList<Fault> Of(Entry entry) =>
        Wrong(entry).Select(wrong => new Fault($"entry {entry.Id}", wrong,
            "It was damaged or not written by this program; take it from its device again.")).ToValueList();

    private static IEnumerable<string> Wrong(Entry entry)
    {
        if (entry.Id.Version != 7)
            yield return "its identifier is not a UUID of version 7";
        if (!Identifier.IsValid(entry.Car))
            yield return "its car is not an identifier";
        if (!Identifier.IsValid(entry.Device))
            yield return "its device is not an identifier";
        if (!Identifier.IsValid(entry.Kind))
            yield return "its kind is not an identifier";
        if (entry.Sequence < 1)
            yield return $"its sequence number is {entry.Sequence}, not 1 or more";
        if (entry.Version < 1)
            yield return $"its version is {entry.Version}, not 1 or more";
        if (entry.After.Count > MaxAfter)
            yield return $"it names {entry.After.Count} earlier entries, more than {MaxAfter}";
        if (!IsHash(entry.Salt))
            yield return "its salt is not 64 small hexadecimal digits";
        if (entry.Sequence == 1 ? entry.Previous.Length > 0 : !IsHash(entry.Previous))
            yield return "its previous hash is not 64 small hexadecimal digits, or for a device's first entry not empty";
        if (entry.At.Ticks % TimeSpan.TicksPerMillisecond != 0)
            yield return "its time is not in whole milliseconds";
        if (entry.Payload.Length > MaxPayload || !IsJson(entry.Payload))
            yield return $"its payload is not JSON of at most {MaxPayload} characters";
    }

    private static bool IsHash(string text) => text.Length == HashDigits && text.All(char.IsAsciiHexDigitLower);

    private static bool IsJson(string text)
    {
        if (!IsWellFormed(text))
            return false;
        try
        {
            var reader = new Utf8JsonReader(System.Text.Encoding.UTF8.GetBytes(text));
            while (reader.Read())
                continue;
            return true;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    /// <summary>No half of a surrogate pair: UTF-8 has no form for one, so it would not come back as it went.</summary>
    private static bool IsWellFormed(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (!char.IsSurrogate(text[i]))
                continue;
            if (!char.IsHighSurrogate(text[i]) || i + 1 == text.Length || !char.IsLowSurrogate(text[++i]))
                return false;
        }

        return true;
    }
}
