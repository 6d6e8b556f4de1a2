using System.Security.Cryptography;
using Refettle.SaleFile.Sealing;

namespace Refettle.Storage.Keys;

/// <summary>This machine's key for sale files: ECDSA on P-256, in a file beside the store that only its owner may read.</summary>
/// <remarks>A backup of the store does not hold it: who finds a backup cannot sign as its owner.</remarks>
public sealed class SealKey : ISealKey, IDisposable
{
    internal const int Bits = 256;

    private readonly ECDsa _key;

    private SealKey(ECDsa key) => (_key, PublicKey) = (key, Convert.ToHexStringLower(key.ExportSubjectPublicKeyInfo()));

    public string PublicKey { get; }

    public string Sign(ReadOnlySpan<byte> digest) => Convert.ToHexStringLower(_key.SignHash(digest.ToArray(), EcdsaSeal.Format));

    public void Dispose() => _key.Dispose();

    /// <summary>The key of a store; a new one the first time.</summary>
    /// <param name="store">The store's path.</param>
    public static Result<SealKey> Of(string store)
    {
        var path = store + ".seal-key";
        try
        {
            if (!File.Exists(path))
                Make(path);
            var key = ECDsa.Create();
            key.ImportFromPem(File.ReadAllText(path));
            return key.KeySize == Bits ? Result<SealKey>.Good(new(key)) : Bad(path, $"its key has {key.KeySize} bits, not {Bits}");
        }
        catch (Exception problem) when (problem is CryptographicException or ArgumentException)
        {
            return Bad(path, "it holds no key that can be read");
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return Result<SealKey>.Bad(new Fault(path, $"the key cannot be kept there ({problem.Message.TrimEnd('.')})",
                "Free some space, or see who owns the folder."));
        }
    }

    /// <summary>Under a name of its own until it is whole; of two processes the first one's stays.</summary>
    private static void Make(string path)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var partial = $"{path}.{Environment.ProcessId}";
        OwnerFile.Write(partial, key.ExportPkcs8PrivateKeyPem());
        try
        {
            File.Move(partial, path, overwrite: false);
        }
        catch (IOException) when (File.Exists(path))
        {
            File.Delete(partial);
        }
    }

    private static Result<SealKey> Bad(string path, string found) =>
        Result<SealKey>.Bad(
            new Fault(path, found, "Bring it back from where you keep keys; or move it away, and files made from now on carry a new one."));
}
