namespace Refettle.QuickLine;

/// <summary>Other words of the trade, of both sides of the ocean, and what dictation makes of some. From memory; a car's own names come first.</summary>
internal static class Synonyms
{
    private static readonly Dictionary<string, string[]> Table = new()
    {
        ["absorber"] = ["damper"], ["shock"] = ["damper"], ["dumper"] = ["damper"], ["rotor"] = ["disc"], ["disk"] = ["disc"], ["silencer"] = ["box"], ["muffler"] = ["box"],
        ["fender"] = ["wing"], ["hood"] = ["bonnet"], ["windshield"] = ["windscreen"], ["trunk"] = ["boot"], ["sway"] = ["roll"], ["antiroll"] = ["roll"],
        ["tie"] = ["track"], ["wishbone"] = ["arm"], ["cv"] = ["drive"], ["uj"] = ["universal", "joint"], ["cat"] = ["catalytic", "catalyst"],
        ["diff"] = ["differential"], ["gaiter"] = ["boot"], ["gaitor"] = ["boot"], ["boot"] = ["gaiter"], ["parking"] = ["handbrake"], ["emergency"] = ["handbrake"],
        ["transmission"] = ["gearbox"], ["speedo"] = ["speedometer"], ["prop"] = ["propshaft"], ["headlight"] = ["headlamp"], ["light"] = ["lamp"],
        ["calliper"] = ["caliper"], ["calibre"] = ["caliper"], ["break"] = ["brake"], ["joined"] = ["joint"], ["ling"] = ["link"], ["bold"] = ["bolt"], ["peddle"] = ["pedal"],
        ["wiring"] = ["loom"], ["harness"] = ["loom"], ["mounting"] = ["mount"], ["box"] = ["case"], ["tyre"] = ["wheel"], ["tire"] = ["wheel"], ["cap"] = ["cover"],
        ["seatbelt"] = ["belt"], ["aerial"] = ["antenna"], ["aux"] = ["auxiliary"], ["bearing"] = ["bearing"], ["seal"] = ["gasket"], ["gasket"] = ["seal"],
    };

    public static IReadOnlyList<string> Of(string word) => Table.TryGetValue(word, out var others) ? others : [];
}
