using Refettle.Logbook;

namespace Refettle.SaleFile.Chapters;

/// <summary>The photos of the log, in its order.</summary>
internal static class Snapshots
{
    private const int MostWordsOfACaption = 12;

    public static IEnumerable<Section> Of(Sources from)
    {
        var all = All(from).ToValueList();
        if (all.Count > 0)
            yield return new("Photos",
                [new Said($"{Sources.Count(all.Count, "photo")}, in the order of the log. Days are those of the devices' clocks.",
                    Backing.Explains, []), new Pictures(all)]);
    }

    /// <summary>The first and the last photo: how it was, how it is.</summary>
    public static IEnumerable<Block> OfSummary(Sources from)
    {
        var all = All(from).ToList();
        if (all.Count > 0)
            yield return new Pictures((all.Count == 1 ? [all[0]] : new[] { all[0], all[^1] }).Select(Short).ToValueList());
    }

    private static IEnumerable<Picture> All(Sources from) => from.InForce<PhotoTaken>().Select(line => new Picture(
        line.Told.Photo.Hash, line.Told.Photo.Width, line.Told.Photo.Height,
        $"{line.Entry.Day:yyyy-MM-dd}: {line.Told.Photo.Says ?? EntryWords.Of(line.Told.Photo, from.Names)}", line.Entry.Number));

    private static Picture Short(Picture picture)
    {
        var words = picture.Caption.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words.Length <= MostWordsOfACaption
            ? picture
            : picture with { Caption = $"{string.Join(' ', words.Take(MostWordsOfACaption))} …" };
    }
}
