using Refettle.Logbook;

namespace Refettle.QuickLine;

/// <summary>Understands a line about a car: which thing, what kind, which figures. It never fails; what it
/// does not understand is a note.</summary>
public sealed class LineReader(Structure structure)
{
    /// <summary>The longest line, in characters.</summary>
    public const int MaxLength = 500;

    private const int MostThings = 6;
    private const double FitOfBag = 0.6;
    private const double NoteShare = 0.34;

    private readonly Vocabulary _vocabulary = Vocabulary.Of(structure);
    private readonly Dictionary<string, Part> _parts = structure.Parts.ToDictionary(part => $"part {part.Id}");

    public LineAnswer Read(string line, string? near = null)
    {
        if (BagLine.Read(line, BelongsTo) is { } bag)
            return new(line, bag.Kind == LineKind.Note ? [bag] : [bag, NoteOf(bag.Also.Count > 0 ? null : bag.About, bag.Fit)], []);
        var words = LineWords.Of(line);
        var kinds = KindJudge.Of(words);
        var readings = kinds.SelectMany((kind, place) => Readings(kind, words, near).Take(place == 0 ? MostThings : 1)).ToList();
        if (readings.All(reading => reading.Kind != LineKind.Note))
            readings.Add(NoteOf(near, 0));
        return new(line, readings.DistinctBy(reading => (reading.Kind, reading.About, reading.Becomes)).ToValueList(),
            Unread(words, readings[0]));
    }

    private IEnumerable<Reading> Readings(LineKind kind, List<string> words, string? near) => kind switch
    {
        LineKind.Height => Corner(words) is { } corner
            ? [new() { Kind = kind, About = $"corner {corner.Code()}", Fit = 1, Height = LineFigures.Height(words) }]
            : [],
        LineKind.Note => NoteReadings(words, near),
        _ => Found(kind, words, near).SelectMany((match, place) => WithOtherOutcome(Told(kind, match.Thing, match.Fit, words), place == 0)),
    };

    /// <summary>What came of a try is learnt from, and a line may say it loosely ("moved a bit"): of the best thing
    /// the other outcome is offered too.</summary>
    private static IEnumerable<Reading> WithOtherOutcome(Reading reading, bool isBest) =>
        isBest && reading is { Kind: LineKind.Try, Rung: not null }
        ? [reading, reading with { Becomes = reading.Becomes is null ? JointCondition.Freed : null }]
        : [reading];

    /// <summary>Tries and tightenings are of joints only. A line that names nothing is about what the user was looking at.</summary>
    private IEnumerable<(string Thing, double Fit)> Found(LineKind kind, List<string> words, string? near)
    {
        var onlyJoints = kind is LineKind.Try or LineKind.Tightened;
        var found = ThingMatcher.Find(_vocabulary, words, KindJudge.Lean(kind, words))
            .Where(match => !onlyJoints || match.Thing.Kind is not null).ToList();
        if (found.Count > 0)
            return found.Select(match => (match.Thing.Thing, match.Fit));
        return near is not null && (!onlyJoints || near.StartsWith("joint ", StringComparison.Ordinal)) ? [(near, 0)] : [];
    }

    private Reading Told(LineKind kind, string thing, double fit, List<string> words)
    {
        var reading = Told(kind, words) with { About = thing, Fit = fit };
        return kind == LineKind.Finding && _parts.TryGetValue(thing, out var part) && FindingWords.Of(part, words) is { } found
            ? reading with { Scale = found.Scale, Condition = found.Word }
            : reading;
    }

    private static Reading Told(LineKind kind, List<string> words) => new()
    {
        Kind = kind,
        Need = kind is LineKind.Finding or LineKind.Try or LineKind.Done ? LineFigures.Need(words) : null,
        Took = kind is LineKind.Try or LineKind.Done or LineKind.Back ? LineFigures.Took(words) : null,
        Rung = kind == LineKind.Try ? TryWords.Rung(words) : null,
        Becomes = kind == LineKind.Try ? TryWords.Becomes(words) : null,
        IsSoaked = kind == LineKind.Try && TryWords.IsSoaked(words),
        How = kind == LineKind.Tightened && words.Exists(word => word is "snug" or "snugged")
            ? Tightness.Snug
            : kind == LineKind.Tightened
            ? Tightness.Torqued
            : default,
        Torque = kind == LineKind.Tightened && !words.Exists(word => word is "snug" or "snugged") ? LineFigures.Torque(words) : null,
    };

    /// <summary>A note is about a thing only when enough of its words name it; else about what the user looks at, or the car.</summary>
    private IEnumerable<Reading> NoteReadings(List<string> words, string? near)
    {
        var content = words.Where(word => !LineWords.SaysNothing(word) && !word.All(char.IsAsciiDigit) && !KindWords.IsReminder(word))
            .Distinct().ToList();
        var share = content.Count == 0 ? 0 : content.Count(word => _vocabulary.Like(word).Length > 0) / (double)content.Count;
        var found = ThingMatcher.Find(_vocabulary, words, KindJudge.Lean(LineKind.Note, words));
        return share < NoteShare || found.Count == 0
            ? [NoteOf(near, 0), .. found.Take(1).Select(match => NoteOf(match.Thing.Thing, match.Fit))]
            : [.. found.Select(match => NoteOf(match.Thing.Thing, match.Fit)), NoteOf(null, 0)];
    }

    private static Reading NoteOf(string? about, double fit) => new() { Kind = LineKind.Note, About = about, Fit = fit };

    private ValueList<string> BelongsTo(IReadOnlyList<string> rest)
    {
        var words = LineWords.Of(string.Join(' ', rest));
        var found = ThingMatcher.Find(_vocabulary, words, words.Any(KindWords.IsFastener) ? Leaning.Joints : Leaning.Either);
        if (found.Count == 0 || found[0].Fit < FitOfBag)
            return [];
        return found.TakeWhile(match => match.Score > found[0].Score - 0.01).Take(MostThings).Select(match => match.Thing.Thing)
            .ToValueList();
    }

    private static Spot? Corner(List<string> words)
    {
        var (front, rear, left, right) = (words.Contains("front"), words.Contains("rear"), words.Contains("left"), words.Contains("right"));
        return front == rear || left == right
            ? null
            : left
            ? (front ? Spot.FrontLeft : Spot.RearLeft)
            : front
            ? Spot.FrontRight
            : Spot.RearRight;
    }

    private ValueList<string> Unread(List<string> words, Reading best)
    {
        if (best.Kind is LineKind.Note)
            return [];
        var thing = _vocabulary.Things.FirstOrDefault(thing => thing.Thing == best.About);
        return words.Where(word => !LineWords.SaysNothing(word) && !IsRead(word)).Distinct().ToValueList();

        bool IsRead(string word) =>
            NumberWords.At([word], 0) is null
                ? KindWords.IsAny(word) || Covers(thing, word)
                : best is not { Kind: LineKind.Tightened, How: Tightness.Torqued, Torque: null };
    }

    private bool Covers(Nameable? thing, string word) =>
        word is "left" or "right" or "front" or "rear" or "min" or "minute" or "mm" or "height" or "ride" or "gun"
        || (thing is not null && _vocabulary.Like(word).Any(like => thing.Name.Contains(like.Word) || thing.More.Contains(like.Word)));
}
