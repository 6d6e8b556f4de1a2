namespace Refettle.Storage.Tables;

/// <summary>A phone or other machine that may use this garage over the network.</summary>
internal sealed class DeviceRow
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>SHA-256 of its token, in hexadecimal. The token itself is kept nowhere but on the device.</summary>
    public required string TokenHash { get; init; }

    /// <summary>Unix time in milliseconds.</summary>
    public required long Since { get; init; }
}

/// <summary>A code that pairs one device once.</summary>
internal sealed class CodeRow
{
    /// <summary>SHA-256 of the code, in hexadecimal.</summary>
    public required string CodeHash { get; init; }

    /// <summary>Unix time in milliseconds.</summary>
    public required long Until { get; init; }
}
