using System.Security.Cryptography;

namespace Refettle.SaleFile.Sealing;

/// <summary>Tells what was done to a sale file after it was made.</summary>
public static class Verifier
{
    private static readonly byte[] Zeros = System.Text.Encoding.ASCII.GetBytes(RecordLines.Open);

    /// <param name="file">The whole file: page, PDF or record.</param>
    /// <returns>Faults when it holds no record that can be read at all.</returns>
    public static Result<Verification> Of(ReadOnlyMemory<byte> file, ISealCheck check)
    {
        var found = RecordReader.Find(file);
        return found.IsGood ? Result<Verification>.Good(Judge(file.Span, found.Value, check)) : Result<Verification>.Bad(found.Faults);
    }

    private static Verification Judge(ReadOnlySpan<byte> file, FoundRecord found, ISealCheck check)
    {
        var hashes = new string?[found.Lines.Count];
        Parallel.For(0, hashes.Length, i => hashes[i] = found.Lines[i].Entry?.Hash());
        var isListSigned = found.Manifest is not null && IsSigned(found, check);
        var findings = Differences.Of(found, hashes);
        var isWhole = isListSigned && IsWhole(file, found, check);
        var standing = (isListSigned, findings.Count, isWhole) switch
        {
            (false, _, _) => SealStanding.SealBroken,
            (_, > 0, _) => SealStanding.EntriesChanged,
            (_, _, false) => SealStanding.WordsChanged,
            _ => SealStanding.Untouched,
        };
        return new(standing, found.Header, found.Lines.Count,
            found.Signature is { } signature ? Verification.FingerprintOf(signature.Key) : "",
            findings, Differences.Chains(found, hashes));
    }

    private static bool IsSigned(FoundRecord found, ISealCheck check) => found.Signature is { Algorithm: RecordLines.Algorithm } signature
        && check.IsSigned(signature.Key, SealedRecord.Digest(found.HeaderText, found.ManifestText), signature.Manifest);

    private static bool IsWhole(ReadOnlySpan<byte> file, FoundRecord found, ISealCheck check)
    {
        var (place, length) = found.FileSignature.GetOffsetAndLength(file.Length);
        if (length == 0 || found.Signature is not { } signature)
            return false;
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        hash.AppendData(file[..place]);
        hash.AppendData(Zeros);
        hash.AppendData(file[(place + length)..]);
        return check.IsSigned(signature.Key, hash.GetHashAndReset(), signature.File);
    }
}
