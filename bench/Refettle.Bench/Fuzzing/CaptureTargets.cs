using System.Text;
using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.QuickLine;

namespace Refettle.Bench.Fuzzing;

/// <summary>What a phone hands over: lines in plain words, pictures.</summary>
internal static class CaptureTargets
{
    private static readonly string[] Lines =
    [
        "rear left link worn, need 2", "shackle bolt rl moved after 2 soaks, 20 min", "damper bolt torqued to ninety five newton metres",
        "bag 14 four washers, thick ones outside",
        "bag sixteen is in the blue box", "ride height front left three hundred and eighty two", "lid off 25 min", "clip back on",
        "buy penetrant", "front right lamp cracked need a dozen",
    ];

    /// <param name="content">The checkout: its tests hold pictures.</param>
    public static IEnumerable<Target> All(string content, Structure structure)
    {
        // A reader remembers the words it has met, so each thread has its own.
        var reader = new ThreadLocal<LineReader>(() => new(structure));
        var history = new CarHistory(new() { Id = "heron", Name = "Heron", Structure = structure }, [], []);
        var pictures = Directory.EnumerateFiles(Path.Combine(content, "tests", "Refettle.Tests", "Imaging", "Files"))
            .Order(StringComparer.Ordinal).Select(File.ReadAllBytes).ToList();
        return
        [
            Target.Texts("quick lines", 700, Lines, text => ReadLine(reader.Value!, history, text)),
            new("photos", 600, mutator => Changed(mutator, pictures)),
        ];
    }

    private static void ReadLine(LineReader reader, CarHistory history, string text)
    {
        if (text.Trim().Length is 0 or > LineReader.MaxLength)
            return;
        var answer = reader.Read(text);
        Target.Demand(LineCheck.Of(history, answer));
        foreach (var happening in answer.Readings.SelectMany(reading => Telling.Of(history.Car, answer, reading)))
        {
            _ = HappeningCheck.Of(history, happening);
            _ = Happenings.Encode(happening);
        }
    }

    /// <summary>Half of them are changed near the front, where the facts about a picture stand.</summary>
    private static Trial Changed(Mutator mutator, List<byte[]> pictures)
    {
        var picture = mutator.Pick(pictures);
        var front = Math.Min(picture.Length, 400);
        var changed = mutator.Toss(0.5) ? mutator.Change(picture) : [.. mutator.Change(picture[..front]), .. picture[front..]];
        return new(changed, () => Strip(changed));
    }

    private static void Strip(byte[] picture)
    {
        if (PictureFile.Plain(picture) is not { IsGood: true, Value: var plain })
            return;
        if (plain.Length > picture.Length + 100)
            throw new UnsoundAnswerException($"the plain picture has {plain.Length - picture.Length} bytes more");
        if (PictureFile.Plain(plain) is not { IsGood: true, Value: var twice } || !twice.AsSpan().SequenceEqual(plain))
            throw new UnsoundAnswerException("what was plain changed when it was made plain again");
        if (plain.AsSpan().IndexOf(Encoding.ASCII.GetBytes("GPS")) >= 0)
            throw new UnsoundAnswerException("it still says where it was taken");
    }
}
