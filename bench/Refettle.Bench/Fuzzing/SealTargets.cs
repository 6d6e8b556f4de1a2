using System.Security.Cryptography;
using System.Text;
using Refettle.Logbook;
using Refettle.SaleFile.Sealing;
using Refettle.Storage.Keys;

namespace Refettle.Bench.Fuzzing;

/// <summary>The record of a sale file, as whoever was given one reads it.</summary>
internal static class SealTargets
{
    public static IEnumerable<Target> All(ValueList<Entry> entries)
    {
        var sealed_ = Sealed(entries);
        var text = Encoding.UTF8.GetString(sealed_);
        return
        [
            Target.Texts("sale-file records", 200, [text], changed => Verify(Encoding.UTF8.GetBytes(changed), sealed_)),
            Target.Files("sale files as bytes", 100, [sealed_], changed => Verify(changed, sealed_)),
        ];
    }

    /// <summary>Whatever was changed shows.</summary>
    private static void Verify(byte[] file, byte[] made)
    {
        if (Verifier.Of(file, new EcdsaSeal()) is { IsGood: true, Value.Standing: SealStanding.Untouched }
            && !file.AsSpan().SequenceEqual(made))
            throw new UnsoundAnswerException("a changed file is said to be untouched");
    }

    private static byte[] Sealed(ValueList<Entry> entries)
    {
        using var key = new PassingKey();
        using var file = new MemoryStream();
        using (var text = new StreamWriter(file, leaveOpen: true))
            SealedRecord.Write(text, "heron", DateTimeOffset.UnixEpoch,
                [.. entries.Select(entry => GivenEntry.Of(entry, (name, _) => name == "took"))], ["hours"], key);
        FileSeal.Close(file, key);
        return file.ToArray();
    }

    private sealed class PassingKey : ISealKey, IDisposable
    {
        private readonly ECDsa _key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

        public string PublicKey => Convert.ToHexStringLower(_key.ExportSubjectPublicKeyInfo());

        public string Sign(ReadOnlySpan<byte> digest) =>
            Convert.ToHexStringLower(_key.SignHash(digest.ToArray(), DSASignatureFormat.IeeeP1363FixedFieldConcatenation));

        public void Dispose() => _key.Dispose();
    }
}
