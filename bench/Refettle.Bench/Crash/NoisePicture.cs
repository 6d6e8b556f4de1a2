namespace Refettle.Bench.Crash;

/// <summary>Pictures that nobody has seen before: plain PNG files whose data is noise.</summary>
internal static class NoisePicture
{
    /// <param name="length">Bytes of noise.</param>
    public static byte[] Png(Random random, int length)
    {
        var noise = new byte[length];
        random.NextBytes(noise);
        return [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, .. Chunk("IHDR"u8, new byte[13]), .. Chunk("IDAT"u8, noise), .. Chunk("IEND"u8, [])];
    }

    private static byte[] Chunk(ReadOnlySpan<byte> name, byte[] data) =>
        [(byte)(data.Length >> 24), (byte)(data.Length >> 16), (byte)(data.Length >> 8), (byte)data.Length, .. name, .. data, 0, 0, 0, 0];
}
