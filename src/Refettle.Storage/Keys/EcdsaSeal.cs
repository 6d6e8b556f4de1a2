using System.Security.Cryptography;
using Refettle.SaleFile.Sealing;

namespace Refettle.Storage.Keys;

/// <summary>Checks signatures with the platform's ECDSA.</summary>
public sealed class EcdsaSeal : ISealCheck
{
    internal const DSASignatureFormat Format = DSASignatureFormat.IeeeP1363FixedFieldConcatenation;

    public bool IsSigned(string publicKey, ReadOnlySpan<byte> digest, string signature)
    {
        try
        {
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(Convert.FromHexString(publicKey), out _);
            return key.KeySize == SealKey.Bits && key.VerifyHash(digest, Convert.FromHexString(signature), Format);
        }
        catch (Exception problem) when (problem is CryptographicException or FormatException or PlatformNotSupportedException)
        {
            return false;
        }
    }
}
