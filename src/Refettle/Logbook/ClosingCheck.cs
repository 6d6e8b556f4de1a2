namespace Refettle.Logbook;

/// <summary>Whether a tightening, a height or an alignment may be written into a car's log.</summary>
internal static class ClosingCheck
{
    /// <summary>Degrees: three figures rounded to hundredths.</summary>
    private const decimal Rounding = 0.02m;

    private static readonly string[] Corners = ["fl", "fr", "rl", "rr"];

    public static IEnumerable<Fault> Tightened(JointTightened tightened)
    {
        if (tightened.Torque is { Value: <= 0 or > 5000 } torque)
            yield return new($"joint {tightened.Joint}", $"a torque of {torque}", "Give more than 0, up to 5000 N·m.");
        if (tightened is { How: Tightness.Snug, Torque: not null })
            yield return new($"joint {tightened.Joint}", "snug, but with a torque", "Say torqued, or leave the torque out.");
        if (tightened is { How: Tightness.Snug, Checks.Count: > 0 })
            yield return new($"joint {tightened.Joint}", "snug, but checked as torqued", "Say torqued, or leave the check out.");
        if (tightened.Checks is { } checks && checks.Distinct().Count() < checks.Count)
            yield return new($"joint {tightened.Joint}", "the same check twice", "Name each check once.");
    }

    public static IEnumerable<Fault> Measured(HeightMeasured measured)
    {
        if (!Corners.Contains(measured.Corner))
            yield return new("height", $"there is no corner {measured.Corner}", "Give fl, fr, rl or rr.");
        if (measured.Height.Value is < 100 or > 1500)
            yield return new("height", $"{measured.Height} from hub centre to wheel arch", "Give 100 to 1500 mm.");
    }

    /// <remarks>The ranges are wide of any road car: they catch minutes and millimetres given as degrees.</remarks>
    public static IEnumerable<Fault> Measured(AlignmentMeasured measured)
    {
        if (measured is { Wheels.Count: 0, Thrust: null })
            yield return new("alignment", "there is no angle", "Give one wheel at least: toe, camber or caster in degrees.");
        foreach (var wheel in measured.Wheels.Where(wheel => !Corners.Contains(wheel.Corner)))
            yield return new("alignment", $"there is no corner {wheel.Corner}", "Give fl, fr, rl or rr.");
        foreach (var twice in measured.Wheels.GroupBy(wheel => wheel.Corner).Where(group => group.Count() > 1))
            yield return new($"alignment {twice.Key}", "it is there twice", "Give each wheel once.");
        foreach (var (wheel, name, angle, most) in measured.Wheels.SelectMany(wheel => new[]
            { (wheel, "toe", wheel.Toe, 5m), (wheel, "camber", wheel.Camber, 15m), (wheel, "caster", wheel.Caster, 20m) }))
        {
            if (Math.Abs(angle ?? 0) > most)
                yield return new($"alignment {wheel.Corner}", $"{name} {AlignmentWords.Degrees(angle)}",
                    $"Give degrees, at most {most} either way.");
        }

        if (Math.Abs(measured.Thrust ?? 0) > 5)
            yield return new("alignment", $"a thrust line {AlignmentWords.Thrust(measured.Thrust!.Value)}",
                "Give degrees, at most 5 either way.");
        else if (measured.Thrust is { } said && measured.OfRearToe() is { } worked && Math.Abs(said - worked) > Rounding)
            yield return new("alignment",
                $"the thrust line is said to be {AlignmentWords.Thrust(said)}, by the rear toe it is {AlignmentWords.Thrust(worked)}",
                "Look at signs and sides once more: toe-in and right are positive.");
    }
}
