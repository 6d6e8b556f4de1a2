namespace Refettle.QuickLine;

/// <summary>Other words of the trade, of both sides of the ocean, and what dictation makes of some. From
/// memory; a car's own names come first.</summary>
internal static class Synonyms
{
    /// <summary>A word, and the words of names that it may stand for.</summary>
    private const string Table = """
        absorber: damper
        shock: damper
        dumper: damper
        rotor: disc
        disk: disc
        silencer: box
        muffler: box
        fender: wing
        hood: bonnet
        windshield: windscreen
        trunk: boot
        sway: roll
        antiroll: roll
        tie: track
        wishbone: arm
        cv: drive
        uj: universal joint
        cat: catalytic catalyst
        diff: differential
        gaiter: boot
        gaitor: boot
        boot: gaiter
        parking: handbrake
        emergency: handbrake
        transmission: gearbox
        speedo: speedometer
        prop: propshaft
        headlight: headlamp
        light: lamp
        calliper: caliper
        calibre: caliper
        break: brake
        joined: joint
        ling: link
        bold: bolt
        peddle: pedal
        wiring: loom
        harness: loom
        mounting: mount
        box: case
        tyre: wheel
        tire: wheel
        cap: cover
        seatbelt: belt
        aux: auxiliary
        seal: gasket
        gasket: seal
        """;

    private static readonly Dictionary<string, string[]> Others = Table.Split('\n', StringSplitOptions.TrimEntries)
        .Select(line => line.Split(": ")).ToDictionary(line => line[0], line => line[1].Split(' '));

    public static IReadOnlyList<string> Of(string word) => Others.TryGetValue(word, out var others) ? others : [];
}
