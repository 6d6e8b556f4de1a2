using CsCheck;
using Refettle.Bench;
using Refettle.Bench.Threads;
using Refettle.Bench.Torque;

namespace Refettle.Tests.Bench;

public sealed class TorqueTests
{
    private static ScrewThread Thread(string text) => ScrewThread.Read("thread", text).Value;

    // Shigley table 8-15, as two copies print it.
    [Theory]
    [InlineData("black", 0.30)]
    [InlineData("zinc", 0.20)]
    [InlineData("lubricated", 0.18)]
    [InlineData("cadmium", 0.16)]
    [InlineData("anti-seize", 0.12)]
    [InlineData("unknown", 0.20)]
    public void Nut_factors_by_surface(string surface, double factor) => Assert.Equal(factor, Ask.Value($"nut-factor surface={surface}"));

    // Computed with Python for M10x1.5, DKm 12.815 mm, one coefficient for thread and head; five digits.
    [Theory]
    [InlineData(0.08, "0.11714", "0.11682")]
    [InlineData(0.10, "0.14042", "0.14006")]
    [InlineData(0.12, "0.16371", "0.16330")]
    [InlineData(0.14, "0.18699", "0.18653")]
    [InlineData(0.15, "0.19864", "0.19815")]
    [InlineData(0.16, "0.21028", "0.20977")]
    [InlineData(0.20, "0.25685", "0.25624")]
    public void Long_forms_as_nut_factors(double friction, string linear, string motosh)
    {
        Ask.Printed(linear, Friction.LinearNutFactor(Thread("M10"), friction, friction, 12.815));
        Ask.Printed(motosh, Friction.MotoshNutFactor(Thread("M10"), friction, friction, 12.815));
    }

    [Fact]
    public void Friction_from_a_measured_pair()
    {
        // M10, 50 N·m, 26.1 kN, Db 12.815 mm: computed with Python, six digits. The formula itself is from memory of ISO 16047.
        Ask.Printed("0.144376", Ask.Value("friction torque=50Nm preload=26.1kN thread=M10", "total friction"));
        Ask.Printed("0.191571", Ask.Value("friction torque=50Nm preload=26.1kN thread=M10", "nut factor K"));
    }

    [Fact]
    public void The_collar_form_gives_the_textbook_example()
    {
        // Shigley example 8-3 (3/4-16 UNF, 25 000 lbf, friction 0.15), recomputed with Python: K 0.189375, 3550.8 lbf·in.
        var root = Math.Sqrt(4 * 0.351 / Math.PI);
        var factor = Friction.CollarNutFactor(0.75 * 25.4, (0.75 + root) / 2 * 25.4, 25.4 / 16, 0.15, 0.15);
        Ask.Printed("0.189375", factor);
        var torque = NutFactor.TorqueNewtonMetres(Units.PoundForce.To(Units.Newton, 25_000), factor, 0.75 * 25.4);
        Ask.Printed("3550.8", Units.NewtonMetre.To(Units.PoundForceInch, torque));
    }

    // Printed values: a catalogue page that reproduces VDI 2230:2001 (M8x1 … M16x1.5); the formula's own digits computed with Python.
    // FM in kN, MA in N·m. FM within 0.2 % of print, MA within 1.1 % (two-digit entries).
    [Theory]
    [InlineData("M8x1", "8.8", 0.10, 20.7, 22.8, "20.714", "22.831")]
    [InlineData("M8x1", "10.9", 0.10, 30.4, 33.5, "30.424", "33.533")]
    [InlineData("M8x1", "8.8", 0.12, 20.2, 26.1, "20.220", "26.112")]
    [InlineData("M8x1", "10.9", 0.12, 29.7, 38.3, "29.699", "38.351")]
    [InlineData("M8x1", "8.8", 0.14, 19.7, 29.2, "19.699", "29.168")]
    [InlineData("M8x1", "10.9", 0.14, 28.9, 42.8, "28.933", "42.840")]
    [InlineData("M10x1.25", "8.8", 0.10, 32.4, 44, "32.365", "44.465")]
    [InlineData("M10x1.25", "10.9", 0.10, 47.5, 65, "47.537", "65.308")]
    [InlineData("M10x1.25", "8.8", 0.12, 31.6, 51, "31.594", "50.850")]
    [InlineData("M10x1.25", "10.9", 0.12, 46.4, 75, "46.404", "74.686")]
    [InlineData("M10x1.25", "8.8", 0.14, 30.8, 57, "30.780", "56.798")]
    [InlineData("M10x1.25", "10.9", 0.14, 45.2, 83, "45.208", "83.422")]
    [InlineData("M12x1.25", "8.8", 0.10, 49.1, 79, "49.118", "78.669")]
    [InlineData("M12x1.25", "10.9", 0.10, 72.1, 116, "72.142", "115.545")]
    [InlineData("M12x1.25", "8.8", 0.12, 48.0, 90, "48.000", "90.375")]
    [InlineData("M12x1.25", "10.9", 0.12, 70.5, 133, "70.501", "132.739")]
    [InlineData("M12x1.25", "8.8", 0.14, 46.8, 101, "46.810", "101.305")]
    [InlineData("M12x1.25", "10.9", 0.14, 68.7, 149, "68.752", "148.792")]
    [InlineData("M14x1.5", "8.8", 0.10, 66.4, 124, "66.363", "124.330")]
    [InlineData("M14x1.5", "10.9", 0.10, 97.5, 182, "97.470", "182.609")]
    [InlineData("M14x1.5", "8.8", 0.12, 64.8, 142, "64.842", "142.732")]
    [InlineData("M14x1.5", "10.9", 0.12, 95.2, 209, "95.237", "209.637")]
    [InlineData("M14x1.5", "8.8", 0.14, 63.2, 159, "63.225", "159.908")]
    [InlineData("M14x1.5", "10.9", 0.14, 92.9, 234, "92.862", "234.865")]
    [InlineData("M16x1.5", "8.8", 0.10, 89.6, 189, "89.587", "189.035")]
    [InlineData("M16x1.5", "10.9", 0.10, 131.6, 278, "131.582", "277.646")]
    [InlineData("M16x1.5", "8.8", 0.12, 87.6, 218, "87.596", "217.684")]
    [InlineData("M16x1.5", "10.9", 0.12, 128.7, 320, "128.656", "319.724")]
    [InlineData("M16x1.5", "8.8", 0.14, 85.5, 244, "85.465", "244.464")]
    [InlineData("M16x1.5", "10.9", 0.14, 125.5, 359, "125.527", "359.057")]
    public void Assembly_preload_of_fine_threads(
        string thread, string grade, double friction, double printedKilonewtons, double printedTorque, string kilonewtons, string torque)
    {
        var line = $"assembly-preload thread={thread} class={grade} friction={friction}";
        var (preload, tightening) = (Ask.Value(line, "preload") / 1000, Ask.Value(line, "torque"));
        Ask.Printed(kilonewtons, preload);
        Ask.Printed(torque, tightening);
        Ask.Near(printedKilonewtons, preload, 0.002);
        Ask.Near(printedTorque, tightening, 0.011);
    }

    // Computed with Python from the same model; VDI 2230's own coarse rows were recalled from memory only and are not asserted,
    // but for M12 8.8 at 0.14: 41.9 kN, printed in a fastener maker's worked example.
    [Theory]
    [InlineData("M6", "8.8", 0.10, "10.434", "8.956", "0.1431")]
    [InlineData("M6", "8.8", 0.12, "10.163", "10.149", "0.1664")]
    [InlineData("M6", "8.8", 0.14, "9.881", "11.256", "0.1899")]
    [InlineData("M6", "10.9", 0.10, "15.325", "13.153", "0.1431")]
    [InlineData("M6", "10.9", 0.12, "14.927", "14.907", "0.1664")]
    [InlineData("M6", "10.9", 0.14, "14.513", "16.533", "0.1899")]
    [InlineData("M8", "8.8", 0.10, "19.082", "21.632", "0.1417")]
    [InlineData("M8", "8.8", 0.12, "18.596", "24.570", "0.1652")]
    [InlineData("M8", "8.8", 0.14, "18.090", "27.298", "0.1886")]
    [InlineData("M8", "10.9", 0.10, "28.026", "31.772", "0.1417")]
    [InlineData("M8", "10.9", 0.12, "27.313", "36.088", "0.1652")]
    [InlineData("M8", "10.9", 0.14, "26.569", "40.094", "0.1886")]
    [InlineData("M10", "8.8", 0.10, "30.319", "42.606", "0.1405")]
    [InlineData("M10", "8.8", 0.12, "29.557", "48.454", "0.1639")]
    [InlineData("M10", "8.8", 0.14, "28.761", "53.888", "0.1874")]
    [InlineData("M10", "10.9", 0.10, "44.531", "62.577", "0.1405")]
    [InlineData("M10", "10.9", 0.12, "43.412", "71.168", "0.1639")]
    [InlineData("M10", "10.9", 0.14, "42.242", "79.149", "0.1874")]
    [InlineData("M12", "8.8", 0.10, "44.145", "73.473", "0.1387")]
    [InlineData("M12", "8.8", 0.12, "43.046", "83.614", "0.1619")]
    [InlineData("M12", "8.8", 0.14, "41.894", "93.039", "0.1851")]
    [InlineData("M12", "10.9", 0.10, "64.838", "107.914", "0.1387")]
    [InlineData("M12", "10.9", 0.12, "63.224", "122.808", "0.1619")]
    [InlineData("M12", "10.9", 0.14, "61.532", "136.652", "0.1851")]
    [InlineData("M14", "8.8", 0.10, "60.561", "117.259", "0.1383")]
    [InlineData("M14", "8.8", 0.12, "59.062", "133.530", "0.1615")]
    [InlineData("M14", "8.8", 0.14, "57.490", "148.658", "0.1847")]
    [InlineData("M14", "10.9", 0.10, "88.948", "172.224", "0.1383")]
    [InlineData("M14", "10.9", 0.12, "86.748", "196.122", "0.1615")]
    [InlineData("M14", "10.9", 0.14, "84.439", "218.342", "0.1847")]
    [InlineData("M16", "8.8", 0.10, "82.856", "180.019", "0.1358")]
    [InlineData("M16", "8.8", 0.12, "80.882", "205.811", "0.1590")]
    [InlineData("M16", "8.8", 0.14, "78.797", "229.838", "0.1823")]
    [InlineData("M16", "10.9", 0.10, "121.694", "264.403", "0.1358")]
    [InlineData("M16", "10.9", 0.12, "118.795", "302.285", "0.1590")]
    [InlineData("M16", "10.9", 0.14, "115.733", "337.574", "0.1823")]
    public void Assembly_preload_of_coarse_threads(
        string thread, string grade, double friction, string kilonewtons, string torque, string factor)
    {
        var line = $"assembly-preload thread={thread} class={grade} friction={friction}";
        Ask.Printed(kilonewtons, Ask.Value(line, "preload") / 1000);
        Ask.Printed(torque, Ask.Value(line, "torque"));
        Ask.Printed(factor, Ask.Value(line, "torque") / Ask.Value(line, "preload") / Thread(thread).DiameterMillimetres * 1000);
    }

    [Fact]
    public void A_printed_coarse_cell() => // a fastener maker's worked example after VDI 2230: M12 8.8, friction 0.14, 41.9 kN
        Ask.Printed("41.9", Ask.Value("assembly-preload thread=M12 class=8.8 friction=0.14", "preload") / 1000);

    [Fact]
    public void Two_samples_of_clamp_loads()
    {
        // Blake and Kurtz (Shigley tables 8-13 and 8-14), T = 90 N·m on M12x1.25: data from memory; mean and deviation recomputed.
        var dry = PreloadTest.Of(
            [23.6, 27.6, 28.0, 29.4, 30.3, 30.7, 32.9, 33.8, 33.8, 33.8, 34.7, 35.6, 35.6, 37.4, 37.8, 37.8, 39.2, 40.0, 40.5, 42.7]);
        var lubricated = PreloadTest.Of([30.3, 32.5, 32.5, 32.9, 32.9, 33.8, 34.3, 34.7, 37.4, 40.5]);
        Ask.Printed("34.26", dry.Mean);
        Ask.Printed("4.909", dry.Deviation);
        Ask.Printed("34.18", lubricated.Mean);
        Ask.Printed("2.881", lubricated.Deviation);
    }

    // NSTS 08307 Rev A 3.4 and NASA-STD-5020B table 3.
    [Theory]
    [InlineData("torque-dry", 35)]
    [InlineData("torque-cadmium", 30)]
    [InlineData("torque-lubricated", 25)]
    [InlineData("angle", 25)]
    [InlineData("stretch", 10)]
    [InlineData("hydraulic", 15)]
    [InlineData("washer", 10)]
    [InlineData("instrumented", 5)]
    public void Scatter_by_method(string method, double percent) =>
        Assert.Equal(percent, Ask.Value($"scatter method={method}", "scatter ±"));

    // αA = (1 + s)/(1 − s), computed; four digits.
    [Theory]
    [InlineData(0.17, "1.4096")]
    [InlineData(0.23, "1.5974")]
    [InlineData(0.28, "1.7778")]
    [InlineData(0.35, "2.0769")]
    public void Tightening_factor(double scatter, string factor) => Ask.Printed(factor, Scatter.TighteningFactor(scatter));

    [Fact]
    public void The_standards_worked_example_of_measured_preloads()
    {
        // NASA-STD-5020B A.2: 450 lbf·in, 0.375 in, 30 preloads in lbf. Printed: mean 4721, K 0.254, Γmax 0.644, Γmin 0.353,
        // σ 1097, Γ90/95 0.498; the longer digits recomputed with NumPy.
        const string Loads =
            "7760,4010,3587,4635,4920,3797,4462,4940,6220,4780,7229,4310,3900,4322,4475,3812,4132,4219,6100,4685,6080,4291,3054,4804,3910,3303,4090,4550,6062,5180lbf";
        var answer = Ask.Answer($"preload-test torque=450lbf·in thread=3/8-16 preloads={Loads}").In(Units.PoundForce);
        double Value(string name) => answer.Values.Single(value => value.Name == name).Value;
        Ask.Printed("4720.633", Value("mean"));
        Ask.Printed("1096.964", Value("standard deviation"));
        Ask.Printed("0.254203", Value("nut factor K"));
        Ask.Printed("0.643847", Value("Γ max") / 100);
        Ask.Printed("0.353053", Value("Γ min") / 100);
        Ask.Printed("0.498447", Value("Γ 90/95") / 100);
    }

    // NASA-STD-5020B table 5; between two sizes the smaller one's factor.
    [Theory]
    [InlineData(5, 4.291)]
    [InlineData(9, 4.291)]
    [InlineData(10, 2.856)]
    [InlineData(15, 2.492)]
    [InlineData(20, 2.319)]
    [InlineData(30, 2.145)]
    [InlineData(50, 1.999)]
    [InlineData(100, 1.875)]
    [InlineData(500, 1.875)]
    public void Tolerance_factors(int count, double factor) => Assert.Equal(factor, PreloadTest.ToleranceFactor(count));

    // NASA-STD-5020B eqs. 3 to 5, 25, 26: computed example M10, K 0.20, 48 ± 2 N·m; to the digits printed.
    [Theory]
    [InlineData("torque-dry", 1, "33750", "14950")]
    [InlineData("torque-dry", 5, "33750", "19399.93")]
    [InlineData("torque-lubricated", 1, "31250", "17250")]
    [InlineData("torque-lubricated", 5, "31250", "20428.52")]
    public void Preload_limits_of_a_joint(string method, int bolts, string most, string least)
    {
        var line = $"preload-limits torque=48Nm tolerance=2Nm thread=M10 k=0.20 method={method} bolts={bolts}";
        Ask.Printed("24000", Ask.Value(line, "nominal preload"));
        Ask.Printed(most, Ask.Value(line, "most"));
        Ask.Printed(least, Ask.Value(line, "least"));
    }

    [Fact]
    public void Running_torque()
    {
        // NASA-STD-5020B eqs. 27 to 30: its example 60 ± 3 lbf·in above running torque gives 63 and 57; computed 41.15 and 32 N·m.
        var above = Ask.Answer("running-torque torque=60lbf·in tolerance=3lbf·in least-drag=0Nm most-drag=2Nm stated=above-running")
            .In(Units.PoundForceInch);
        Assert.Equal([63, 57], above.Values.Select(value => Math.Round(value.Value, 9)));
        var total = Ask.Answer("running-torque torque=40Nm tolerance=2Nm least-drag=0.85Nm most-drag=6Nm");
        Assert.Equal([41.15, 32], total.Values.Select(value => Math.Round(value.Value, 9)));
        Assert.False(Ask.Result("running-torque torque=4Nm tolerance=1Nm least-drag=1Nm most-drag=6Nm").IsGood);
    }

    [Fact]
    public void Anti_seize_at_a_dry_torque_passes_the_proof_load()
    {
        // Computed: M10 8.8 at 48 N·m, K 0.20 gives 24.0 kN, K 0.12 gives 40.0 kN, above the 33.7 kN of
        // EN ISO 898-1; 28.8 N·m for equal preload.
        const string Line = "lubricant-swap torque=48Nm thread=M10 class=8.8 k-from=0.20 k-to=0.12";
        Ask.Printed("28.8", Ask.Value(Line, "torque"));
        Ask.Printed("24000", Ask.Value(Line, "preload"));
        Ask.Printed("40000", Ask.Value(Line, "preload if not corrected"));
        Assert.Contains(Ask.Answer(Line).Cautions, caution => caution.Contains("Above the proof load"));
        Assert.Contains(Ask.Answer("preload torque=48Nm thread=M10 class=8.8 k=0.12").Cautions,
            caution => caution.Contains("Above the proof load"));
        Assert.Empty(Ask.Answer("lubricant-swap torque=48Nm thread=M10 class=8.8 k-from=0.20 k-to=0.18").Cautions);
        Assert.Empty(Ask.Answer("preload torque=30Nm thread=M10 class=8.8 k=0.20").Cautions);
    }

    // Tool makers' manuals print 44.44 and 71.11; the others computed from statics.
    [Theory]
    [InlineData("torque=50lbf·ft lever=16in offset=2in", "lbf·ft", "44.44")]
    [InlineData("torque=80Nm lever=40cm offset=5cm", "N·m", "71.11")]
    [InlineData("torque=80Nm lever=400mm offset=50mm angle=90deg", "N·m", "80.00")]
    [InlineData("torque=80Nm lever=400mm offset=50mm angle=45deg", "N·m", "73.503176")]
    [InlineData("torque=100Nm lever=450mm offset=75mm", "N·m", "85.714286")]
    [InlineData("torque=100Nm lever=450mm offset=75mm angle=180deg", "N·m", "120.000000")]
    public void Adapter_settings(string inputs, string unit, string expected) =>
        Ask.Printed(expected, Ask.Answer("adapter " + inputs).In(Units.Find(unit)!).Values[0].Value);

    [Fact]
    public void An_even_deviation_of_four_percent() => // rectangular ±4 N·m: 4/√3, computed
        Ask.Printed("2.309401", Ask.Value("wrench-range torque=100Nm from=40Nm to=200Nm", "standard uncertainty"));

    [Theory]
    [InlineData("torque=48Nm from=20Nm to=100Nm", "suits", 0)]
    [InlineData("torque=25Nm from=20Nm to=200Nm", "suits", 1)]
    [InlineData("torque=10Nm from=20Nm to=100Nm", "does not suit", 1)]
    public void A_wrench_suits_or_not(string inputs, string verdict, int cautions)
    {
        var answer = Ask.Answer("wrench-range " + inputs);
        Assert.Equal((verdict, cautions), (answer.Verdict, answer.Cautions.Count));
    }

    [Fact]
    public void A_turn_adds_load_until_yield()
    {
        // Computed with Python: M10x1.5, 20 mm shank and 20 mm thread, 205 GPa: 2.924572e-6 mm/N;
        // 30° adds 34 193.03 N, 90° would be 102.6 kN against 37.1 kN of yield, so it is a yield tightening.
        Ask.Near(2.924572e-6, TorqueAngle.BoltComplianceMillimetresPerNewton(Thread("M10"), 20, 20, 205_000), 5e-7);
        const string Joint = "thread=M10 class=8.8 shank=20mm threaded=20mm";
        Ask.Printed("34193.03", Ask.Value("torque-angle angle=30deg " + Joint));
        Ask.Printed("30.000", Ask.Value("torque-angle angle=26.3212deg " + Joint) / 1000);
        Ask.Printed("102.6", Ask.Value("torque-angle angle=90deg " + Joint) / 1000);
        Ask.Printed("37.1", Ask.Value("torque-angle angle=90deg " + Joint, "yield load") / 1000);
        Assert.Equal("elastic", Ask.Answer("torque-angle angle=30deg " + Joint).Verdict);
        Assert.Contains("single-use", Ask.Answer("torque-angle angle=90deg " + Joint).Cautions.Single());
    }

    [Fact]
    public void Torque_and_preload_turn_into_each_other() =>
        Gen.Select(Gen.Double[0.1, 2000], Gen.Double[0.05, 0.6], Gen.Double[3, 39]).Sample((torque, factor, diameter) =>
            Math.Abs(NutFactor.TorqueNewtonMetres(NutFactor.PreloadNewtons(torque, factor, diameter), factor, diameter)
                - torque) < 1e-9 * torque);

    [Fact]
    public void More_friction_takes_more_torque_and_leaves_less_preload() =>
        Gen.Select(Gen.Double[0.04, 0.35], Gen.Double[0.001, 0.05]).Sample((friction, more) =>
            Friction.ExactNutFactor(Thread("M10"), friction + more, friction + more, 12.815) > Friction.ExactNutFactor(Thread("M10"),
                friction, friction, 12.815)
            && AssemblyPreload.PreloadNewtons(Thread("M10"), 640, friction + more) < AssemblyPreload.PreloadNewtons(Thread("M10"), 640,
                friction));

    [Fact]
    public void The_three_long_forms_agree_within_a_percent() =>
        Gen.Select(Gen.OneOf(Gen.Const("M6"), Gen.Const("M8"), Gen.Const("M10"), Gen.Const("M12x1.25"), Gen.Const("M16")),
            Gen.Double[0.08, 0.2], Gen.Double[0.08, 0.2]).Sample((name, inThread, atHead) =>
        {
            var (thread, ring) = (Thread(name), HeadBearing.MeanDiameterMillimetres(Thread(name))!.Value);
            var exact = Friction.ExactNutFactor(thread, inThread, atHead, ring);
            return Math.Abs(Friction.LinearNutFactor(thread, inThread, atHead, ring) / exact - 1) < 0.01
                && Math.Abs(Friction.MotoshNutFactor(thread, inThread, atHead, ring) / exact - 1) < 0.01;
        });
}
