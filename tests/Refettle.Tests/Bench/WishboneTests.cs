using System.Diagnostics;
using System.Text.Json;
using CsCheck;
using Refettle.Bench.Alignment;

namespace Refettle.Tests.Bench;

/// <summary>Rear-view linkage. Expected postures: closed form and scipy.optimize.fsolve, which agree to 1e-12.</summary>
public sealed class WishboneTests
{
    private static readonly DoubleWishbone Linkage = new(new(350, 200), new(700, 180), new(400, 450), new(670, 460), new(760, 300), -0.5);

    [Fact]
    public void Lengths_and_angles()
    {
        Ask.Printed("350.570962859", Linkage.LowerLength);
        Ask.Printed("270.185121722", Linkage.UpperLength);
        Ask.Printed("281.602556807", Linkage.UprightLength);
        Ask.Printed("6.115503566", Linkage.InclinationDegrees);
        Ask.Printed("5.615503566", Linkage.InclinationDegrees + Linkage.StaticCamberDegrees);
    }

    [Theory]
    [InlineData(-1, "669.003326", "459.891419", "-0.703986")]
    [InlineData(-3, "667.010310", "459.663513", "-1.112136")]
    [InlineData(1, "670.996788", "460.105005", "-0.296068")]
    [InlineData(3, "672.990718", "460.304297", "0.111646")]
    [InlineData(-6, "664.021564", "459.294741", "-1.724850")]
    public void Upper_arm_changed_lower_arm_still(double change, string outward, string up, string camber)
    {
        var posture = Linkage.After(new(UpperArm: change), Held.LowerArm)!.Value;
        Ask.Printed(outward, posture.UpperOuter.Out);
        Ask.Printed(up, posture.UpperOuter.Up);
        Ask.Printed(camber, posture.CamberDegrees);
        Assert.Equal(change, CamberTarget.Solve(Linkage, Adjuster.UpperArm, Held.LowerArm, posture.CamberDegrees)!.Value, 6);
    }

    [Fact]
    public void Slope_at_the_start() => // first-order slope 0.203959° per mm
        Ask.Printed("0.203959", (Linkage.After(new(UpperArm: 1e-4), Held.LowerArm)!.Value.CamberDegrees + 0.5) / 1e-4);

    [Theory]
    [InlineData(-3, 0, 0, "699.963899", "179.377941", "667.031868", "459.048250", "-1.100323")]
    [InlineData(3, 0, 0, "700.035664", "180.634202", "672.966274", "460.932700", "0.099359")]
    [InlineData(0, 3, 0, "702.969017", "179.377232", "670.033608", "459.047142", "-1.101015")]
    [InlineData(0, -3, 0, "697.031062", "180.634670", "669.963815", "460.933375", "0.099797")]
    [InlineData(0, 0, 30, "700.446396", "209.344720", "667.356101", "488.996346", "-1.132747")]
    [InlineData(0, 0, -30, "697.062521", "150.526711", "669.500433", "430.777190", "-0.001362")]
    [InlineData(-3, 0, 30, "700.461976", "208.740902", "664.464303", "488.033164", "-1.728796")]
    public void Wheel_height_held(
        double upper, double lower, double up, string lowerOut, string lowerUp, string upperOut, string upperUp, string camber)
    {
        var posture = Linkage.After(new(upper, lower, WheelUp: up), Held.RideHeight)!.Value;
        Ask.Printed(lowerOut, posture.LowerOuter.Out);
        Ask.Printed(lowerUp, posture.LowerOuter.Up);
        Ask.Printed(upperOut, posture.UpperOuter.Out);
        Ask.Printed(upperUp, posture.UpperOuter.Up);
        Ask.Printed(camber, posture.CamberDegrees);
        Assert.Equal(300 + up, posture.WheelCentre.Up, 7);
    }

    [Fact]
    public void Instant_centre()
    {
        var centre = Linkage.InstantCentre()!.Value;
        Ask.Printed("-2284.831461", centre.Out);
        Ask.Printed("350.561798", centre.Up);
        Assert.Contains("3045 mm", Ask.Answer("wishbone-travel " + Geometry + " travel=0mm").Values[2].ToString());
        Ask.Printed("0.018817389", Ask.Value("wishbone-travel " + Geometry + " travel=0mm", "initial camber gain, top inward"));
        Assert.Null((Linkage with { UpperOuter = new(700, 430), UpperInner = new(350, 450) }).InstantCentre());
    }

    [Fact]
    public void The_number_gives_both_conventions()
    {
        var answer = Ask.Answer("wishbone " + Geometry + " target=-1.112136deg adjust=upper-arm");
        Assert.Equal(-3, answer.Values.Single(value => value.Name == "change, lower arm still").Value, 5);
        var atHeight = Ask.Answer("wishbone " + Geometry + " target=-1.100323deg adjust=upper-arm");
        Assert.Equal(-3, atHeight.Values.Single(value => value.Name == "change, at ride height").Value, 5);
        Assert.Contains(answer.Cautions, caution => caution.StartsWith("Toe is not computed", StringComparison.Ordinal));
    }

    [Fact]
    public void Toe_follows_the_side_the_rod_is_on()
    {
        // By reasoning: the ball joint line leans in at the top, the rod's joint below moves outward against it, so a
        // rod ahead pulls the front of the wheel in.
        const string Rod = " rod-inner=380,240mm rod-outer=690,230mm steer-arm=";
        var ahead = Ask.Value("wishbone " + Geometry + " target=-1.5deg adjust=lower-arm" + Rod + "120mm",
            "toe change, toe-in positive, lower arm still");
        var behind = Ask.Value("wishbone " + Geometry + " target=-1.5deg adjust=lower-arm" + Rod + "-120mm",
            "toe change, toe-in positive, lower arm still");
        Assert.True(ahead > 0, $"{ahead}");
        Assert.Equal(-ahead, behind, 12);
    }

    [Fact]
    public void A_rod_in_line_with_the_lower_arm_keeps_its_toe()
    {
        // A rod with the lower arm's own pivots cannot tell a change of the upper arm.
        var rod = new TieRod(Linkage.LowerInner, Linkage.LowerOuter, 120);
        var posture = Linkage.After(new(UpperArm: -6), Held.RideHeight)!.Value;
        Assert.Equal(0, rod.ToeChangeDegrees(Linkage, posture), 9);
    }

    [Fact]
    public void An_impossible_target_is_refused() =>
        Assert.Equal("target", Ask.Result("wishbone " + Geometry + " target=14.9deg adjust=lower-shim").Faults.Single().Place);

    [Theory]
    [InlineData("upper-outer=670,460mm", "upper-outer=460,100mm")]
    [InlineData("upper-inner=400,450mm", "upper-inner=669,459mm")]
    [InlineData("wheel=760,300mm", "wheel=760,-300mm")]
    public void Points_that_make_no_linkage_are_refused(string right, string wrong) =>
        Assert.False(Ask.Result("wishbone-travel " + Geometry.Replace(right, wrong) + " travel=10mm").IsGood);

    [SciPyFact]
    public void Random_linkages_agree_with_scipy()
    {
        var random = new Random(20);
        var cases = Enumerable.Range(0, 300).Select(_ => Case.Make(random)).ToList();
        var expected = Solve(cases);
        Assert.Equal(cases.Count, expected.Count);
        var compared = 0;
        foreach (var (one, other) in cases.Zip(expected))
        {
            if (one.Linkage.After(one.Change, one.Held) is not { } posture)
                continue;
            compared++;
            Assert.Equal(other.Camber, posture.CamberDegrees, 1e-7);
            Assert.Equal(other.Lo[0], posture.LowerOuter.Out, 1e-7);
            Assert.Equal(other.Uo[1], posture.UpperOuter.Up, 1e-7);
            Assert.Equal(other.Wc[0], posture.WheelCentre.Out, 1e-7);
        }

        Assert.True(compared >= 295, $"only {compared} linkages close");
    }

    [Fact]
    public void A_solved_change_reaches_its_target() =>
        Gen.Select(Gen.Double[-3, 3], Gen.Int[0, 3], Gen.Bool).Sample((target, adjuster, still) =>
        {
            var held = still ? Held.LowerArm : Held.RideHeight;
            return CamberTarget.Solve(Linkage, (Adjuster)adjuster, held, target) is { } change
                && Math.Abs(Linkage.After(CamberTarget.Change((Adjuster)adjuster, change), held)!.Value.CamberDegrees - target) < 1e-9;
        });

    private const string Geometry =
        "lower-inner=350,200mm lower-outer=700,180mm upper-inner=400,450mm upper-outer=670,460mm wheel=760,300mm camber=-0.5deg";

    private static List<Posture> Solve(IEnumerable<Case> cases)
    {
        var script = Path.Combine(AppContext.BaseDirectory, "Bench", "Oracle", "linkage.py");
        using var process = Process.Start(new ProcessStartInfo(SciPyFactAttribute.Python!, [script])
        { RedirectStandardInput = true, RedirectStandardOutput = true })!;
        foreach (var one in cases)
            process.StandardInput.WriteLine(one.Json());
        process.StandardInput.Close();
        var lines = process.StandardOutput.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        process.WaitForExit();
        return lines.Select(line => JsonSerializer.Deserialize<Posture>(line, JsonSerializerOptions.Web)!).ToList();
    }

    private sealed record Posture(double[] Lo, double[] Uo, double[] Wc, double Camber);

    private sealed record Case(DoubleWishbone Linkage, LinkageChange Change, Held Held)
    {
        /// <summary>A linkage of the size of a car's, with changes of up to 10 mm and travel of up to 40 mm.</summary>
        public static Case Make(Random random)
        {
            double Near(double middle, double spread) => middle + spread * (2 * random.NextDouble() - 1);
            var linkage = new DoubleWishbone(
                new(Near(350, 60), Near(200, 40)), new(Near(700, 40), Near(180, 40)), new(Near(420, 60), Near(460, 40)),
                new(Near(670, 40), Near(460, 40)), new(Near(760, 20), Near(300, 30)), Near(0, 2));
            var held = random.Next(2) == 0 ? Held.LowerArm : Held.RideHeight;
            return new(linkage, new(Near(0, 10), Near(0, 10), Near(0, 10), Near(0, 10), held == Held.RideHeight ? Near(0, 40) : 0), held);
        }

        public string Json() => JsonSerializer.Serialize(new
        {
            li = Pair(Linkage.LowerInner),
            lo = Pair(Linkage.LowerOuter),
            ui = Pair(Linkage.UpperInner),
            uo = Pair(Linkage.UpperOuter),
            wc = Pair(Linkage.WheelCentre),
            camber = Linkage.StaticCamberDegrees,
            upper = Change.UpperArm,
            lower = Change.LowerArm,
            upper_pivot = Change.UpperPivot,
            lower_pivot = Change.LowerPivot,
            up = Change.WheelUp,
            held = Held == Held.LowerArm ? "arm" : "height",
        });

        private static double[] Pair(Point point) => [point.Out, point.Up];
    }
}

/// <summary>Skipped, by name, on a machine without SciPy (Debian package <c>python3-scipy</c>).</summary>
internal sealed class SciPyFactAttribute : FactAttribute
{
    /// <summary>A Python that has SciPy, or null.</summary>
    public static string? Python { get; } = ((string[])["/usr/bin/python3", "python3"]).FirstOrDefault(HasSciPy);

    public SciPyFactAttribute()
    {
        if (Python is null)
            Skip = "SciPy is not installed (apt-get install python3-scipy)";
    }

    private static bool HasSciPy(string python)
    {
        try
        {
            using var process =
                Process.Start(new ProcessStartInfo(python, ["-c", "import scipy.optimize"]) { RedirectStandardError = true })!;
            process.WaitForExit();
            return process.ExitCode == 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }
}
