using System.Text;
using System.Text.Json;

namespace Refettle.Web.Garage;

/// <summary>Entries as js/kept.js hands them over: a list of them in JSON without their payloads, ended by a
/// zero, then the payloads one after the other. Payloads are most of it: within JSON each quotation mark in them would be
/// masked, and unmasked here at length.</summary>
public static class EntryBytes
{
    /// <param name="Entry">With no payload.</param>
    /// <param name="Bytes">How many the payload takes.</param>
    private sealed record Head(Entry Entry, bool Sent, int Bytes);

    public static IReadOnlyList<KeptEntry> Read(ReadOnlySpan<byte> bytes)
    {
        var end = bytes.IndexOf((byte)0);
        var heads = JsonSerializer.Deserialize<ValueList<Head>>(bytes[..end], ExchangeJson.Options)!;
        var rest = bytes[(end + 1)..];
        var entries = new List<KeptEntry>(heads.Count);
        foreach (var (entry, sent, length) in heads)
        {
            entries.Add(new(entry with { Payload = Encoding.UTF8.GetString(rest[..length]) }, sent));
            rest = rest[length..];
        }

        return entries;
    }
}
