using System.Buffers;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Refettle.Logbook;

/// <summary>The hash that chains a device's entries: SHA-256 over a canonical form in which the payload is present only as one
/// salted commitment per field, so that a field can be blacked out later and the chain still verifies.</summary>
/// <remarks>The form is laid down byte for byte in docs/logbook.md. It depends on nothing of the machine: identifiers and numbers
/// are written in one way, and values are taken as the payload's own text, so that no number is ever reformatted.</remarks>
public static class EntryHash
{
    private const string Form = "refettle-entry-1";

    /// <summary>64 small hexadecimal digits.</summary>
    public static string Of(Entry entry) => Of(entry, PayloadField.Of(entry));

    /// <summary>The hash from the fields' commitments alone; the entry's payload and salt are not looked at.</summary>
    /// <param name="fields">All fields of the payload, in the order of <see cref="PayloadField.Of"/>.</param>
    public static string Of(Entry entry, ValueList<PayloadField> fields)
    {
        var form = new ArrayBufferWriter<byte>(512);
        Add(form, Form);
        Add(form, entry.Id.ToString("D"));
        Add(form, entry.Car);
        Add(form, entry.Device);
        Add(form, entry.Sequence);
        Add(form, entry.After.Count);
        foreach (var id in entry.After.Select(id => id.ToString("D")).Order(StringComparer.Ordinal))
            Add(form, id);
        Add(form, entry.Previous);
        Add(form, entry.At.ToUnixTimeMilliseconds());
        Add(form, entry.Kind);
        Add(form, entry.Version);
        Add(form, fields.Count);
        foreach (var field in fields)
        {
            Add(form, field.Name);
            Add(form, field.Commitment);
        }

        return Convert.ToHexStringLower(SHA256.HashData(form.WrittenSpan));
    }

    private static void Add(ArrayBufferWriter<byte> form, long number) => Add(form, number.ToString(CultureInfo.InvariantCulture));

    /// <summary>A netstring: length in bytes, colon, the bytes, comma. No text can then pass for two.</summary>
    private static void Add(ArrayBufferWriter<byte> form, string text)
    {
        var bytes = Encoding.UTF8.GetByteCount(text);
        Encoding.UTF8.GetBytes($"{bytes.ToString(CultureInfo.InvariantCulture)}:", form);
        Encoding.UTF8.GetBytes(text, form);
        form.Write(","u8);
    }
}
