namespace Refettle;

/// <summary>How bad a condition is.</summary>
public enum Severeness
{
    /// <summary>As new, or nothing of the kind.</summary>
    Sound,

    /// <summary>Aged, and does what it should.</summary>
    Used,

    /// <summary>Works, and will not for long or not as it should.</summary>
    Worn,

    /// <summary>Must not go back on as it is.</summary>
    Bad,
}

/// <summary>A word for a condition.</summary>
/// <param name="Word">One or two words, small.</param>
/// <param name="Says">What one sees.</param>
public sealed record ConditionWord(string Word, string Says, Severeness How);

/// <summary>The form of a test that a limit is wanted for.</summary>
/// <param name="What">What is measured.</param>
/// <param name="Unit">In what.</param>
/// <param name="IsMost">Whether the limit is the most that it may be, else the least.</param>
/// <param name="Says">How it is done.</param>
public sealed record TestForm(string What, string Unit, bool IsMost, string Says);

/// <summary>A short scale of worded conditions for a kind of part.</summary>
/// <param name="Id">One word or two: <c>ball-joint</c>.</param>
/// <param name="Known">Words in a part's name that tell that the scale is for it.</param>
/// <param name="Words">From good to bad.</param>
/// <param name="Origin">Where the scale comes from.</param>
public sealed record ConditionScale(
    string Id, string Name, ValueList<string> Known, ValueList<ConditionWord> Words, ValueList<TestForm> Tests, string Origin)
{
    public ConditionWord? Find(string? word) => Words.FirstOrDefault(one => one.Word == word);
}

/// <summary>The scales of condition.</summary>
/// <remarks>Words and tests are common practice, no source; rust grades A to D are those of ISO 8501-1, whose standard was not opened. The
/// tests are forms: what is allowed on a car stands in its maker's manual and nowhere here.</remarks>
public static class ConditionScales
{
    public const string Rust = "rust";
    public const string Perforation = "perforation";
    public const string Thinning = "thinning";

    /// <summary>Whether a rusty place carries load; with perforation or thinning it makes the part unsound.</summary>
    public const string Place = "place";

    public const string Structural = "structural";

    private const string Practice = "common practice, no source";

    public static ValueList<ConditionScale> All { get; } = [.. Parts.All, .. Metal];

    /// <summary>Scales that fit any part of sheet or steel.</summary>
    private static ValueList<ConditionScale> Metal =>
    [
        new(Rust, "Surface rust", [], [
            new("A", "mill scale or coating holds, hardly any rust", Severeness.Sound),
            new("B", "rusting has begun, coating or scale flakes", Severeness.Used),
            new("C", "scale gone or scrapes off, slight pitting", Severeness.Worn),
            new("D", "scale gone, pitted all over", Severeness.Bad)], [],
            "grades of ISO 8501-1; the worst grade present counts"),
        new(Perforation, "Perforation", [], [
            new("none", "no hole, none under the pick", Severeness.Sound), new("pinholes", "light shows through", Severeness.Worn),
            new("holes", "holes", Severeness.Bad)], [], Practice),
        new(Thinning, "Thinning", [], [
            new("none", "full thickness", Severeness.Sound), new("thinned", "thinner than beside it", Severeness.Worn),
            new("gives", "gives under the pick or the thumb", Severeness.Bad)],
            [new("wall thickness", "mm", false, "ultrasonic or calliper, cleaned to bright metal, at the thinnest spot")], Practice),
        new(Place, "What the place carries", [], [
            new("not structural", "skin, closing panel, bracket of no load", Severeness.Sound),
            new(Structural, "sill, rail, mounting, jacking point, seat or belt anchor", Severeness.Sound)], [], Practice),
    ];

    public static ConditionScale? Find(string id) => All.FirstOrDefault(scale => scale.Id == id);

    /// <summary>The scales for a part, the one of its own kind first, told by its name; any part may rust.</summary>
    public static ValueList<ConditionScale> For(Part part)
    {
        var name = $" {part.Name.ToLowerInvariant()} ";
        var own = All.Select(scale => (scale, fits: scale.Known.Select(word => Fit(name, word)).DefaultIfEmpty().Max()))
            .Where(pair => pair.fits.Ends > 0);
        return [.. own.OrderByDescending(pair => pair.fits).Select(pair => pair.scale), .. Metal];
    }

    /// <summary>What a thing is stands last in its name: a damper's dust boot is a boot. Of words that
    /// end there the longest tells most.</summary>
    private static (int Ends, int Length) Fit(string name, string word) =>
        name.LastIndexOf(word, StringComparison.Ordinal) is var start && start < 0 ? default : (start + word.TrimEnd().Length, word.Length);

    /// <summary>The scales for a joint: fastener and rust.</summary>
    public static ValueList<ConditionScale> ForJoint { get; } = [.. All.Where(scale => scale.Id is "fastener" or Rust)];

    /// <summary>Whether the newest findings say that a part that carries load is rusted through or gives.</summary>
    public static bool IsUnsound(IEnumerable<Finding> ofPart)
    {
        var newest = new Dictionary<string, string?>();
        foreach (var finding in ofPart.Where(finding => finding.Word is not null))
            newest[finding.Scale] = finding.Word;
        return newest.GetValueOrDefault(Place) == Structural
            && (newest.GetValueOrDefault(Perforation) is "pinholes" or "holes" || newest.GetValueOrDefault(Thinning) == "gives");
    }

    private static class Parts
    {
        public static ValueList<ConditionScale> All { get; } =
        [
            Of("damper", "Damper", ["damper"],
                [new("pressure", "N", false, "force at a set stroke and speed, or rebound to bump by hand on both sides")],
                ("even", "extends and resists alike on both sides", 0), ("film", "a film of oil", 1),
                ("drips", "drips, or skips, lags or clicks", 3), ("no charge", "does not extend", 3)),
            Of("ball-joint", "Ball joint", ["ball joint", "track rod end", "drop link"],
                [new("play", "mm", true, "dial gauge, pushed and pulled or levered, unloaded as the maker says"),
                    new("turning torque", "N·m", false, "after five flips, two to four seconds a turn, read on the fifth")],
                ("tight", "no play, smooth", 0), ("smooth", "moves easily, no play", 1), ("play", "play can be felt", 3),
                ("rough", "grates or sticks", 3)),
            Of("tie-rod", "Tie rod", ["tie rod", "track rod"],
                [new("play", "mm", true, "dial gauge across the joint while the wheel is rocked")],
                ("straight", "straight, thread good", 0), ("thread rusty", "adjuster turns after cleaning", 1), ("bent", "bent", 3),
                ("play", "play can be felt", 3)),
            Of("bush", "Bush", ["bush", " mount "],
                [new("movement", "mm", true, "levered, at the wheel or the arm; springs back or stays")],
                ("springs back", "springs back when levered, sleeve centred", 0), ("crazed", "surface cracks only", 1),
                ("stays", "stays where it is levered to, sleeve off centre", 2), ("torn", "rubber torn from the sleeve", 3)),
            Of("boot", "Boot", ["boot ", "gaiter", "bellows"], [], ("supple", "supple, clamps tight", 0),
                ("hard", "hard or crazed, tight", 2), ("torn", "torn, cut or off its seat", 3)),
            Of("bearing", "Bearing", ["bearing"],
                [new("axial play", "mm", true, "dial gauge on the hub, pushed and pulled"),
                    new("run-out", "mm", true, "dial gauge, one slow turn")],
                ("quiet", "turns without a sound", 0), ("dry", "turns dry", 1), ("rough", "rumbles or catches", 3),
                ("play", "play can be felt", 3)),
            Of("hose", "Hose", ["hose"], [new("age", "d", true, "date moulded on it")], ("supple", "supple, dry", 0),
                ("hard", "hard or shiny", 2), ("cracked", "cracks or fabric in sight", 3), ("bulged", "bulges or damp", 3)),
            Of("spring", "Spring", ["spring"],
                [new("free length", "mm", false, "on the bench, both sides"),
                    new("wire thickness", "mm", false, "calliper at the thinnest pit")],
                ("straight", "no pits, free length as new", 0), ("surface rust", "rust that brushes off", 1),
                ("pitted", "pits: where cracks begin", 3), ("broken", "broken, or shorter than it was", 3)),
            Of("seal", "Seal", ["seal", "gasket", "o-ring"], [], ("dry", "dry", 0), ("damp", "damp around it", 2), ("leaks", "drips", 3),
                ("hard", "hard or grooved", 3)),
            Of("weatherstrip", "Weatherstrip", ["weatherstrip", "door seal", "tailgate seal", "boot seal", "glass rubber"],
                [new("pull on a strip of paper", "N", false, "paper shut in, pulled out along the seal")],
                ("soft", "soft, grips paper", 0), ("flattened", "flattened, paper slips", 2), ("hard", "hard or cracked", 3),
                ("torn", "torn or gone", 3)),
            Of("brake-disc", "Brake disc or drum", ["disc ", "drum "],
                [new("thickness", "mm", false, "micrometer at eight places"), new("run-out", "mm", true, "dial gauge, nuts done up"),
                    new("inner diameter", "mm", true, "of a drum, in two directions, past the lip")],
                ("even", "even, no lip", 0), ("lipped", "lip at the rim", 2), ("scored", "scored or blue", 3), ("cracked", "cracked", 3)),
            Of("brake-pad", "Brake pad or shoe", [" pad ", " pads ", "shoe"],
                [new("lining thickness", "mm", false, "calliper at the thinnest place")],
                ("thick", "more than half left", 0), ("thin", "less than half left", 2), ("worn", "near the backing", 3),
                ("soaked", "oil or fluid in it", 3)),
            Of("fastener", "Fastener", ["bolt", " nut", "screw", "stud", "clip"],
                [new("running torque", "N·m", false, "self-locking nut on a clean thread, before it seats")],
                ("clean", "thread and head good", 0), ("rusty", "rusty, runs after cleaning", 1),
                ("stretched", "necked, or thread pulled", 3), ("rounded", "head or thread gone", 3)),
            Of("panel", "Panel", ["panel", "wing", "door ", "bonnet", "sill", "arch", "floor", "tailgate", "bumper", "gutter"], [],
                ("straight", "straight, paint holds", 0), ("dented", "dents or scratches", 1), ("filled", "filler under the paint", 2),
                ("buckled", "buckled or torn", 3)),
        ];

        private static ConditionScale Of(
            string id, string name, ValueList<string> known, ValueList<TestForm> tests,
            params ReadOnlySpan<(string Word, string Says, int How)> words)
        {
            var all = new List<ConditionWord>();
            foreach (var (word, says, how) in words)
                all.Add(new(word, says, (Severeness)how));
            return new(id, name, known, all.ToValueList(), tests, Practice);
        }
    }
}
