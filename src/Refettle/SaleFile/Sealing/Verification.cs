namespace Refettle.SaleFile.Sealing;

/// <summary>What became of a sale file since it was made.</summary>
public enum SealStanding
{
    /// <summary>Not a byte was changed since the key's holder made it.</summary>
    Untouched,

    /// <summary>The entries are those that were signed; something around them was changed.</summary>
    WordsChanged,

    /// <summary>Entries were changed, removed or added; the signed list tells which.</summary>
    EntriesChanged,

    /// <summary>The list of entries is not the one that was signed: nothing vouches for any of it.</summary>
    SealBroken,
}

/// <summary>What happened to one entry.</summary>
public enum EntryChange
{
    Changed,
    Removed,
    Added,
}

/// <summary>One entry that is not as the file was made with.</summary>
/// <param name="Line">Its line in the record, from 1; null for one that is gone.</param>
public sealed record EntryFinding(EntryChange Change, string Device, long Sequence, int? Line, string Says);

/// <summary>The answer of the verifier.</summary>
/// <param name="Entries">How many the file has now.</param>
/// <param name="Fingerprint">Of the key that signed; whether it was the seller's is for people to compare.</param>
/// <param name="Chains">Where a device's chain did not hold when the file was made already.</param>
public sealed record Verification(
    SealStanding Standing, RecordHeader Header, int Entries, string Fingerprint, ValueList<EntryFinding> Findings, ValueList<string> Chains)
{
    /// <summary>What no check of a file can show; told with every answer.</summary>
    public static ValueList<string> CannotProve { get; } =
    [
        "that what was entered was true, or that nothing was left out while the work was done",
        "that the dates are right: they are what the devices' clocks said",
        "who held the key: compare its fingerprint with the one the seller tells you in person",
    ];

    /// <summary>Of a public key: the first 128 bits of its SHA-256, in groups of four digits.</summary>
    public static string FingerprintOf(string publicKey)
    {
        var digits = Convert.ToHexStringLower(
            System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.ASCII.GetBytes(publicKey)))[..32];
        return string.Join(' ', digits.Chunk(4).Select(group => new string(group)));
    }
}
