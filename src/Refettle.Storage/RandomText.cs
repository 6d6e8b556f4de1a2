using System.Security.Cryptography;

namespace Refettle.Storage;

/// <summary>Random bytes as text.</summary>
internal static class RandomText
{
    /// <summary>Two small hexadecimal digits a byte.</summary>
    public static string Hex(RandomNumberGenerator random, int count)
    {
        var bytes = new byte[count];
        random.GetBytes(bytes);
        return Convert.ToHexStringLower(bytes);
    }
}
