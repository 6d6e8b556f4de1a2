using Refettle.SaleFile;

namespace Refettle.Paper;

/// <summary>Gives the pictures of a file in their order, while the next ones are read on the other cores:
/// that takes most of a file's time.</summary>
internal sealed class PicturesAhead(SalePaper paper)
{
    /// <summary>Few, since each holds its pixels until it is made smaller.</summary>
    private static readonly int Ahead = Math.Min(Environment.ProcessorCount, 8) + 1;

    private readonly int _all = paper.Document.Sections.SelectMany(section => section.Blocks).OfType<Pictures>()
        .Sum(pictures => pictures.Shown.Count);
    private int _given;

    /// <summary>Each picture with its bytes, null when it is not here. Tells the paper's progress.</summary>
    public IEnumerable<(Picture Picture, byte[]? Bytes)> Of(Pictures pictures)
    {
        var (reading, next) = (new Queue<Task<byte[]?>>(), 0);
        foreach (var picture in pictures.Shown)
        {
            for (; next < pictures.Shown.Count && reading.Count < Ahead; next++)
                reading.Enqueue(Read(pictures.Shown[next].Name));
            var bytes = reading.Dequeue().GetAwaiter().GetResult();
            paper.Progress?.Report(0.9 * ++_given / _all);
            yield return (picture, bytes);
        }
    }

    private Task<byte[]?> Read(string name) => Task.Run(() => paper.Pictures.Read(name, SalePaper.PicturePixels));
}
