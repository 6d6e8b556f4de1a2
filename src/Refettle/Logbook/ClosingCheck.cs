namespace Refettle.Logbook;

/// <summary>Whether a tightening or a height may be written into a car's log.</summary>
internal static class ClosingCheck
{
    private static readonly string[] Corners = ["fl", "fr", "rl", "rr"];

    public static IEnumerable<Fault> Tightened(JointTightened tightened)
    {
        if (tightened.Torque is { Value: <= 0 or > 5000 } torque)
            yield return new($"joint {tightened.Joint}", $"a torque of {torque}", "Give more than 0, up to 5000 N·m.");
        if (tightened is { How: Tightness.Snug, Torque: not null })
            yield return new($"joint {tightened.Joint}", "snug, but with a torque", "Say torqued, or leave the torque out.");
    }

    public static IEnumerable<Fault> Measured(HeightMeasured measured)
    {
        if (!Corners.Contains(measured.Corner))
            yield return new("height", $"there is no corner {measured.Corner}", "Give fl, fr, rl or rr.");
        if (measured.Height.Value is < 100 or > 1500)
            yield return new("height", $"{measured.Height} from hub centre to wheel arch", "Give 100 to 1500 mm.");
    }
}
