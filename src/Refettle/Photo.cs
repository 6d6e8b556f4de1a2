namespace Refettle;

/// <summary>A picture that belongs to the car. The bytes are kept beside the logbook under their
/// hash; the log says what they show.</summary>
public sealed record Photo
{
    /// <summary>SHA-256 of the picture's bytes, small hexadecimal.</summary>
    public required string Hash { get; init; }

    /// <summary>Pixels, as it is shown upright.</summary>
    public required int Width { get; init; }

    public required int Height { get; init; }

    /// <summary>Hash of a small version for lists; null where there is none.</summary>
    public string? Small { get; init; }

    /// <summary>Hash of the picture as the camera made it, its place taken out; null when only the smaller one was kept.</summary>
    public string? Original { get; init; }

    /// <summary>What it shows: <c>part x</c>, <c>joint x</c>, <c>space x</c> …, <c>bag 14</c>.</summary>
    public ValueList<string> Of { get; init; } = [];

    /// <summary>The entry it belongs to: a step, a try, a finding; null for none.</summary>
    public Guid? Entry { get; init; }

    public string? Says { get; init; }

    /// <summary>Variance of the Laplacian when it was taken; null when not worked out.</summary>
    public double? Sharpness { get; init; }
}

/// <summary>The name under which bytes are kept: their SHA-256.</summary>
public static class ContentHash
{
    public const int Digits = 64;

    public static bool IsValid(string? hash) => hash is { Length: Digits } && hash.All(char.IsAsciiHexDigitLower);

    public static string Of(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(bytes));
}
