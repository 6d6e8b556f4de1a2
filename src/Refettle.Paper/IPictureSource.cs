namespace Refettle.Paper;

/// <summary>Where the bytes of pictures are kept. Several are read at a time, from any thread.</summary>
public interface IPictureSource
{
    /// <summary>A JPEG without metadata, upright, at most so many pixels on its longer side; null when it
    /// is not here or cannot be read.</summary>
    byte[]? Read(string name, int mostPixels);
}

/// <summary>A garage without pictures.</summary>
public sealed class NoPictures : IPictureSource
{
    public byte[]? Read(string name, int mostPixels) => null;
}
