namespace Refettle.Storage.Tables;

/// <summary>A picture that several machines share. Rows are added and read, never changed.</summary>
internal sealed class PictureRow
{
    /// <summary>SHA-256 of its bytes, small hexadecimal.</summary>
    public required string Hash { get; init; }

    public required byte[] Bytes { get; init; }
}
