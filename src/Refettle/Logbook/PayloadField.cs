using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Refettle.Logbook;

/// <summary>One top-level field of an entry's payload as the entry's hash sees it.</summary>
/// <param name="Name">As written in the payload; empty for a payload that is not an object.</param>
/// <param name="Text">The value's own JSON text; null when it is blacked out.</param>
/// <param name="Blinding">Hexadecimal; with it and the text the commitment can be checked, without it nobody can guess the text.
/// Null when it is blacked out.</param>
/// <param name="Commitment">SHA-256 of blinding and text, hexadecimal.</param>
/// <remarks>An entry that is given away with a blacked-out field must be given as fields, without its
/// salt: the salt opens all of them.</remarks>
public sealed record PayloadField(string Name, string? Text, string? Blinding, string Commitment)
{
    /// <summary>The fields in the order of their names' UTF-8 bytes; of one name, in the order in which they are written.</summary>
    public static ValueList<PayloadField> Of(Entry entry) => Texts(entry.Payload)
        .OrderBy(field => Encoding.UTF8.GetBytes(field.Name), ByBytes)
        .Select(field => Seal(entry.Salt, field.Name, field.Text))
        .ToValueList();

    private static readonly Comparer<byte[]> ByBytes =
        Comparer<byte[]>.Create((left, right) => left.AsSpan().SequenceCompareTo(right));

    /// <summary>The field with its content taken out.</summary>
    public PayloadField BlackedOut() => this with { Text = null, Blinding = null };

    /// <summary>Whether text and blinding are the ones committed to; a blacked-out field has nothing to contradict.</summary>
    public bool IsTrue =>
        Text is null || Blinding is null || Commitment == Commit(Convert.FromHexString(Blinding), Text);

    private static PayloadField Seal(string salt, string name, string text)
    {
        var blinding = HMACSHA256.HashData(Encoding.UTF8.GetBytes(salt), Encoding.UTF8.GetBytes(name));
        return new(name, text, Convert.ToHexStringLower(blinding), Commit(blinding, text));
    }

    /// <summary>The commitment that a blinding, in hexadecimal, makes of a text; empty when it is not hexadecimal.</summary>
    public static string Commit(string blinding, string text) =>
        blinding.Length % 2 == 0 && blinding.All(char.IsAsciiHexDigit) ? Commit(Convert.FromHexString(blinding), text) : "";

    private static string Commit(byte[] blinding, string text) =>
        Convert.ToHexStringLower(SHA256.HashData([.. blinding, .. Encoding.UTF8.GetBytes(text)]));

    private static List<(string Name, string Text)> Texts(string payload)
    {
        try
        {
            return ObjectTexts(Encoding.UTF8.GetBytes(payload));
        }
        catch (JsonException)
        {
            return [("", payload)];
        }
    }

    private static List<(string Name, string Text)> ObjectTexts(byte[] payload)
    {
        var reader = new Utf8JsonReader(payload);
        var fields = new List<(string, string)>();
        if (!reader.Read() || reader.TokenType != JsonTokenType.StartObject)
            return [("", Encoding.UTF8.GetString(payload))];
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            var name = Encoding.UTF8.GetString(reader.ValueSpan);
            reader.Read();
            var start = (int)reader.TokenStartIndex;
            reader.Skip();
            fields.Add((name, Encoding.UTF8.GetString(payload.AsSpan(start, (int)reader.BytesConsumed - start))));
        }

        while (reader.Read())
            continue;
        return fields;
    }
}
