using System.Security.Cryptography;
using System.Text;

namespace Refettle.Storage.Pairing;

/// <summary>Secrets as they are shown, and as they are kept.</summary>
internal static class PairingCode
{
    /// <summary>Digits and letters that are not taken for each other (Crockford's base 32): 5 bits each.</summary>
    private const string Letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    private const int Length = 10;
    private const int TokenBytes = 32;

    /// <summary>Fifty random bits in two groups: <c>4F7KQ-0XR2M</c>.</summary>
    public static string New(RandomNumberGenerator random)
    {
        var bytes = new byte[Length];
        random.GetBytes(bytes);
        var code = string.Concat(bytes.Select(one => Letters[one % Letters.Length]));
        return $"{code[..(Length / 2)]}-{code[(Length / 2)..]}";
    }

    /// <summary>256 random bits.</summary>
    public static string NewToken(RandomNumberGenerator random) => RandomText.Hex(random, TokenBytes);

    /// <summary>As typed by hand: small letters, blanks, a missing dash, O for 0, I and L for 1.</summary>
    public static string Plain(string typed) => string.Concat(typed.ToUpperInvariant().Where(char.IsAsciiLetterOrDigit))
        .Replace('O', '0').Replace('I', '1').Replace('L', '1');

    /// <summary>Secrets of this length need no slow hash: nobody can try them all.</summary>
    public static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
