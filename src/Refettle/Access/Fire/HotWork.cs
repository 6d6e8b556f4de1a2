using Refettle.Access.Derivation;

namespace Refettle.Access.Fire;

/// <summary>What a way sets alight or melts: what is said of it, what the words of its tool say, and that a weld is welded again.</summary>
/// <remarks>The words are of the trade; which tool makes flame or sparks is common practice, no source. A blade that is driven by hand
/// (hacksaw, knife, snips, chisel, pipe cutter) makes neither, and a drill's swarf is met by its caution: none of these counts.</remarks>
public static class HotWork
{
    private static readonly string[] _flame =
        ["flame", "torch", "torches", "blowtorch", "blowlamp", "blowpipe", "acetylene", "oxyacetylene", "propane", "butane", "plasma",
            "welder", "welding", "brazing", "arc", "mig", "tig", "oxy"];

    private static readonly string[] _spark =
        ["grinder", "grinders", "grinding", "welder", "welding", "plasma", "arc", "mig", "tig", "abrasive"];

    private static readonly string[] _discs = ["cut off", "cutoff", "cutting disc", "cutting wheel", "slitting disc"];

    private static readonly string[] _heat = ["induction", "heat", "heater", "heated", "hot", "oven", "soldering"];

    /// <summary>Of a way of a joint, or of a state when <paramref name="joint"/> is null.</summary>
    public static Danger Of(Way way, Joint? joint) => (way.Danger ?? Danger.None) | OfTool(way.Tool)
        | (joint is { Kind: JointKind.Weld } && way.Where == WorkPlace.OnCar ? Danger.Flame | Danger.Heat | Danger.Spark : Danger.None);

    /// <summary>Of a way back; that a weld is welded again its joint says.</summary>
    public static Danger Of(RefitWay way) => (way.Danger ?? Danger.None) | OfTool(way.Tool);

    /// <summary>Of a tool, by the words of its name.</summary>
    public static Danger OfTool(string? tool)
    {
        var words = WordsOf(tool);
        var isDisc = Array.Exists(_discs, string.Join(' ', words).Contains);
        return (words.Any(_flame.Contains) ? Danger.Flame | Danger.Heat : Danger.None)
            | (isDisc || words.Any(_spark.Contains) ? Danger.Spark : Danger.None)
            | (isDisc || IsSawnByMachine(words) || IsWeldCutter(words) ? Danger.Cutting : Danger.None)
            | (words.Any(_heat.Contains) ? Danger.Heat : Danger.None);
    }

    /// <summary>The words of a tool's name in small letters; all but letters and digits part them.</summary>
    internal static string[] WordsOf(string? tool) =>
        new string([.. (tool ?? "").Select(letter => char.IsLetterOrDigit(letter) ? char.ToLowerInvariant(letter) : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);

    internal static Danger Of(WaySource way, CarStanding standing) =>
        way.Way is { } own ? Of(own, way.Fact.Kind == FactKind.Open ? standing.Joints[way.Fact.Subject] : null)
        : OfTool(Ordering.Workplace.OutOf(way, standing)?.Tool);

    private static bool IsSawnByMachine(string[] words) =>
        Array.Exists(words, word => word is "jigsaw" or "chainsaw")
        || words.Where((word, i) => word is "saw" or "saws" && (i == 0 || words[i - 1] != "hand")).Any();

    private static bool IsWeldCutter(string[] words) => words.Contains("weld") && words.Contains("cutter");
}
