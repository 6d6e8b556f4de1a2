using System.Security.Cryptography;
using Refettle.SaleFile.Sealing;

namespace Refettle.Tests.SaleFile;

/// <summary>A key that lives as long as a test.</summary>
internal sealed class TestSeal : ISealKey, ISealCheck
{
    private const DSASignatureFormat Format = DSASignatureFormat.IeeeP1363FixedFieldConcatenation;

    private readonly ECDsa _key = ECDsa.Create(ECCurve.NamedCurves.nistP256);

    public string PublicKey => Convert.ToHexStringLower(_key.ExportSubjectPublicKeyInfo());

    public string Sign(ReadOnlySpan<byte> digest) => Convert.ToHexStringLower(_key.SignHash(digest.ToArray(), Format));

    public bool IsSigned(string publicKey, ReadOnlySpan<byte> digest, string signature)
    {
        try
        {
            using var key = ECDsa.Create();
            key.ImportSubjectPublicKeyInfo(Convert.FromHexString(publicKey), out _);
            return key.VerifyHash(digest, Convert.FromHexString(signature), Format);
        }
        catch (Exception problem) when (problem is CryptographicException or FormatException)
        {
            return false;
        }
    }
}
