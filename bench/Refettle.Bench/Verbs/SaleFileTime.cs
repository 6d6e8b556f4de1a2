using System.Diagnostics;
using Refettle.Logbook;
using Refettle.Paper;
using Refettle.Paper.Html;
using Refettle.Paper.Pdf;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;
using Refettle.Storage.Keys;
using SkiaSharp;

namespace Refettle.Bench.Verbs;

/// <summary>How long a sale file of many entries and photos takes and how much memory; and how long a sealed record takes to verify.
/// <c>sale-file [ENTRIES [PHOTOS [pdf|html]]]</c>, <c>verify [ENTRIES]</c>. Peer: sha256sum over the same bytes.</summary>
internal static class SaleFileTime
{
    private const string Car = "heron";

    public static int Run(string[] arguments)
    {
        var (entries, photos) = (Number(arguments, 0, 1_500), Number(arguments, 1, 300));
        using var place = new Place();
        var names = Enumerable.Range(0, photos).Select(i => Photo(place, i)).ToList();
        var history = CarHistory.Of(Car, BigLog.Entries(Car, entries));
        Console.WriteLine(
            $"{Machine.Line}; {entries} entries, {photos} photos of 2000 x 1500 pixels, {names.Sum(name => new FileInfo(name).Length) / 1e6:0.0} MB");
        foreach (var (form, write) in new (string, Action<Stream, SalePaper>)[] { ("pdf", PdfPaper.Write),
            ("html", HtmlPaper.Write) }.Where(one => arguments.Length < 3 || arguments[2] == one.Item1))
        {
            var file = place.File($"sale.{form}");
            var watch = Stopwatch.StartNew();
            using (var stream = new FileStream(file, FileMode.Create, FileAccess.ReadWrite))
                write(stream, Paper(history, names, place.Key));
            var (own, peer) = (watch.Elapsed, Sum([.. names, file]));
            Console.WriteLine(
                $"{form}: {own.TotalSeconds:0.00} s, {new FileInfo(file).Length / 1e6:0.0} MB, highest memory of the process so far {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB; sha256sum of photos and file {peer.TotalSeconds:0.00} s, ratio {own / peer:0.0}");
        }

        return 0;
    }

    public static int Verify(string[] arguments)
    {
        var count = Number(arguments, 0, 100_000);
        using var place = new Place();
        var file = place.File("record.jsonl");
        using (var stream = new FileStream(file, FileMode.Create, FileAccess.ReadWrite))
        {
            using (var text = new StreamWriter(stream, leaveOpen: true))
                SealedRecord.Write(text, Car, DateTimeOffset.UnixEpoch,
                    BigLog.Entries(Car, count).Select((entry, i) => GivenEntry.Of(entry, (field, _) => i % 3 == 0 && field == "took"))
                        .ToList(), ["hours"], place.Key);
            FileSeal.Close(stream, place.Key);
        }

        Console.WriteLine($"{Machine.Line}; {count} entries, {new FileInfo(file).Length / 1e6:0.0} MB, a third with a field blacked out");
        for (var i = 0; i < 5; i++)
        {
            var watch = Stopwatch.StartNew();
            var found = Verifier.Of(File.ReadAllBytes(file), new EcdsaSeal()).Value;
            var (own, peer) = (watch.Elapsed, Sum([file]));
            Console.WriteLine($"{found.Standing}: {own.TotalSeconds:0.00} s; sha256sum {peer.TotalSeconds:0.00} s, ratio {own / peer:0.0}");
        }

        return 0;
    }

    private static SalePaper Paper(CarHistory history, List<string> photos, SealKey key)
    {
        var document = SaleFileWriter.Of(new()
        { History = history, Made = DateTimeOffset.UnixEpoch, Fingerprint = Verification.FingerprintOf(key.PublicKey) }).Value;
        var pictures = new Section("Photos",
            [new Pictures(photos.Select(photo => new Picture(photo, 2000, 1500, "2026-03-01: Rear left shackle bolt", 1)).ToValueList())]);
        return new(document with { Sections = [.. document.Sections, pictures] }, Car, history.Car.Structure, Privacy.Standard,
            new ScaledPictures(name => name), key);
    }

    /// <summary>Coarse seeded noise: as hard to compress as a photo of rust.</summary>
    private static string Photo(Place place, int number)
    {
        var random = new Random(number);
        using var small = new SKBitmap(250, 188);
        for (var y = 0; y < small.Height; y++)
        {
            for (var x = 0; x < small.Width; x++)
                small.SetPixel(x, y, new((byte)random.Next(120, 200), (byte)random.Next(60, 120), (byte)random.Next(30, 80)));
        }

        using var large = small.Resize(new SKImageInfo(2000, 1500), new SKSamplingOptions(SKFilterMode.Linear, SKMipmapMode.None));
        using var image = SKImage.FromBitmap(large);
        using var data = image.Encode(SKEncodedImageFormat.Jpeg, 88);
        var path = place.File($"{number}.jpg");
        System.IO.File.WriteAllBytes(path, data.ToArray());
        return path;
    }

    private static TimeSpan Sum(IEnumerable<string> files)
    {
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(new ProcessStartInfo("sha256sum", files) { RedirectStandardOutput = true })!;
        _ = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return watch.Elapsed;
    }

    private static int Number(string[] arguments, int at, int usual) =>
        at < arguments.Length ? int.Parse(arguments[at], System.Globalization.CultureInfo.InvariantCulture) : usual;

    /// <summary>A folder that is gone afterwards, with a key.</summary>
    private sealed class Place : IDisposable
    {
        private readonly string _folder = Directory.CreateTempSubdirectory("refettle-bench-").FullName;

        public Place() => Key = SealKey.Of(File("store")).Value;

        public SealKey Key { get; }

        public string File(string name) => Path.Combine(_folder, name);

        public void Dispose()
        {
            Key.Dispose();
            Directory.Delete(_folder, recursive: true);
        }
    }
}
