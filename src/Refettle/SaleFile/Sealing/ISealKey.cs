namespace Refettle.SaleFile.Sealing;

/// <summary>The key that closes a sale file. It is kept outside the core; its public half goes into the file.</summary>
public interface ISealKey
{
    /// <summary>Hexadecimal, as SubjectPublicKeyInfo (RFC 5480).</summary>
    string PublicKey { get; }

    /// <summary>ECDSA on P-256 over a SHA-256 digest; r and s, 32 bytes each, hexadecimal.</summary>
    string Sign(ReadOnlySpan<byte> digest);
}

/// <summary>Checks signatures of <see cref="ISealKey"/>. Whatever is given, it answers; what cannot be read is not true.</summary>
public interface ISealCheck
{
    bool IsSigned(string publicKey, ReadOnlySpan<byte> digest, string signature);
}
