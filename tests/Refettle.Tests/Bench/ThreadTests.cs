using CsCheck;
using Refettle.Bench;
using Refettle.Bench.Threads;

namespace Refettle.Tests.Bench;

public sealed class ThreadTests
{
    private static ScrewThread Thread(string text) => ScrewThread.Read("thread", text).Value;

    // d2, d1, d3, As from ISO 68-1, ISO 724 and ISO 898-1 formulas computed with Python, to the digits printed;
    // the area printed by EN ISO 898-1 as reproduced in two fastener catalogues.
    [Theory]
    [InlineData("M6", "5.3505", "4.9175", "4.7731", "20.1234", 20.1)]
    [InlineData("M8", "7.1881", "6.6468", "6.4664", "36.6085", 36.6)]
    [InlineData("M10", "9.0257", "8.3762", "8.1597", "57.9896", 58)]
    [InlineData("M12", "10.8633", "10.1056", "9.8530", "84.2665", 84.3)]
    [InlineData("M14", "12.7010", "11.8349", "11.5463", "115.4394", 115)]
    [InlineData("M16", "14.7010", "13.8349", "13.5463", "156.6684", 157)]
    [InlineData("M18", "16.3762", "15.2937", "14.9328", "192.4727", 192)]
    [InlineData("M20", "18.3762", "17.2937", "16.9328", "244.7944", 245)]
    [InlineData("M22", "20.3762", "19.2937", "18.9328", "303.3993", 303)]
    [InlineData("M24", "22.0514", "20.7524", "20.3194", "352.5039", 353)]
    public void Coarse_profiles_are_those_of_the_standard(string name, string d2, string d1, string d3, string area, double printedArea)
    {
        var thread = Thread(name);
        Ask.Printed(d2, thread.PitchDiameterMillimetres);
        Ask.Printed(d1, thread.MinorDiameterMillimetres);
        Ask.Printed(d3, thread.RootDiameterMillimetres);
        Ask.Printed(area, thread.StressAreaSquareMillimetres);
        Assert.Equal(printedArea, thread.RatedAreaSquareMillimetres);
    }

    // Same formulas, computed with Python; loads = rounded area × proof stress (the standard's own fine table was not opened).
    [Theory]
    [InlineData("M8x1", "7.3505", "6.7731", "39.1671", 39.2, 22736, 32536, 38024)]
    [InlineData("M10x1", "9.3505", "8.7731", "64.4940", 64.5, 37410, 53535, 62565)]
    [InlineData("M10x1.25", "9.1881", "8.4664", "61.1986", 61.2, 35496, 50796, 59364)]
    [InlineData("M12x1.25", "11.1881", "10.4664", "92.0718", 92.1, 53418, 76443, 89337)]
    [InlineData("M12x1.5", "11.0257", "10.1597", "88.1260", 88.1, 51098, 73123, 85457)]
    [InlineData("M14x1.5", "13.0257", "12.1597", "124.5455", 125, 72500, 103750, 121250)]
    [InlineData("M16x1.5", "15.0257", "14.1597", "167.2483", 167, 96860, 138610, 161990)]
    [InlineData("M18x1.5", "17.0257", "16.1597", "216.2342", 216, 129600, 179280, 209520)]
    [InlineData("M20x1.5", "19.0257", "18.1597", "271.5034", 272, 163200, 225760, 263840)]
    public void Fine_profiles_and_proof_loads(
        string name, string d2, string d3, string area, double rounded, double load88, double load109, double load129)
    {
        var thread = Thread(name);
        Ask.Printed(d2, thread.PitchDiameterMillimetres);
        Ask.Printed(d3, thread.RootDiameterMillimetres);
        Ask.Printed(area, thread.StressAreaSquareMillimetres);
        Assert.Equal(rounded, thread.RatedAreaSquareMillimetres);
        Assert.Equal([load88, load109, load129],
            ((string[])["8.8", "10.9", "12.9"]).Select(grade => Ask.Value($"strength thread={name} class={grade}", "proof load")), Close);
    }

    // Proof and breaking loads printed by EN ISO 898-1 for coarse threads, two catalogues that agree; the standard's own rounding
    // is uneven, so 0.6 %.
    [Theory]
    [InlineData("M6", 11600, 16700, 19500, 16100, 20900, 24500)]
    [InlineData("M8", 21200, 30400, 35500, 29200, 38100, 44600)]
    [InlineData("M10", 33700, 48100, 56300, 46400, 60300, 70800)]
    [InlineData("M12", 48900, 70000, 81800, 67400, 87700, 103000)]
    [InlineData("M14", 66700, 95500, 112000, 92000, 120000, 140000)]
    [InlineData("M16", 91000, 130000, 152000, 125000, 163000, 192000)]
    [InlineData("M18", 115000, 159000, 186000, 159000, 200000, 234000)]
    [InlineData("M20", 147000, 203000, 238000, 203000, 255000, 299000)]
    [InlineData("M22", 182000, 252000, 294000, 252000, 315000, 370000)]
    [InlineData("M24", 212000, 293000, 342000, 293000, 367000, 431000)]
    public void Loads_are_those_printed(
        string name, double proof88, double proof109, double proof129, double breaks88, double breaks109, double breaks129)
    {
        foreach (var (grade, proof, breaks) in ((string, double, double)[])[("8.8", proof88, breaks88), ("10.9", proof109, breaks109),
            ("12.9", proof129, breaks129)])
        {
            Ask.Near(proof, Ask.Value($"strength thread={name} class={grade}", "proof load"), 0.006);
            Ask.Near(breaks, Ask.Value($"strength thread={name} class={grade}", "breaking load"), 0.006);
        }
    }

    // EN ISO 898-1 tables 2 and 3, SAE J429, as published copies print them. MPa, MPa, MPa, °C.
    [Theory]
    [InlineData("8.8", "M16", 800, 640, 580, 425)]
    [InlineData("8.8", "M18", 830, 660, 600, 425)]
    [InlineData("10.9", "M10", 1040, 940, 830, 425)]
    [InlineData("12.9", "M10", 1220, 1100, 970, 380)]
    public void Classes_are_those_of_the_table(string name, string thread, double ultimate, double yields, double proof, double tempering)
    {
        var grade = FastenerClass.Read("class", name, Thread(thread)).Value;
        Assert.Equal((ultimate, yields, proof, tempering),
            (grade.UltimateMegapascals, grade.YieldMegapascals, grade.ProofMegapascals, grade.LeastTemperingCelsius));
    }

    [Theory]
    [InlineData("SAE 5", 120, 92, 85)]
    [InlineData("SAE 8", 150, 130, 120)]
    public void Grades_are_those_of_the_table_in_ksi(string name, double ultimate, double yields, double proof)
    {
        var grade = FastenerClass.Read("class", name, Thread("1/2-13")).Value;
        Assert.Equal(ultimate, Units.Megapascal.To(Units.KilopoundPerSquareInch, grade.UltimateMegapascals), 9);
        Assert.Equal(yields, Units.Megapascal.To(Units.KilopoundPerSquareInch, grade.YieldMegapascals), 9);
        Assert.Equal(proof, Units.Megapascal.To(Units.KilopoundPerSquareInch, grade.ProofMegapascals), 9);
        Assert.Equal(427, grade.LeastTemperingCelsius);
    }

    // At of NSTS 08307 Rev A appendix A with its constants unrounded (π/4, 9√3/16); T = K d F at K = 0.20 and 75 % of
    // proof, which matches a published shop table; digits computed with Python.
    [Theory]
    [InlineData("1/4-20", "0.03182", "20.530", "2705", "3819", "8.45", "11.93")]
    [InlineData("1/4-28", "0.03637", "23.467", "3092", "4365", "9.66", "13.64")]
    [InlineData("5/16-18", "0.05243", "33.826", "4457", "6292", "17.41", "24.58")]
    [InlineData("5/16-24", "0.05807", "37.462", "4936", "6968", "19.28", "27.22")]
    [InlineData("3/8-16", "0.07749", "49.994", "6587", "9299", "30.87", "43.59")]
    [InlineData("3/8-24", "0.08783", "56.663", "7465", "10539", "34.99", "49.40")]
    [InlineData("7/16-14", "0.10631", "68.586", "9036", "12757", "49.42", "69.77")]
    [InlineData("7/16-20", "0.11872", "76.591", "10091", "14246", "55.18", "77.91")]
    [InlineData("1/2-13", "0.14190", "91.548", "12061", "17028", "75.38", "106.42")]
    [InlineData("1/2-20", "0.15995", "103.196", "13596", "19194", "84.98", "119.97")]
    [InlineData("9/16-12", "0.18194", "117.384", "15465", "21833", "108.74", "153.52")]
    [InlineData("9/16-18", "0.20298", "130.955", "17253", "24358", "121.31", "171.27")]
    [InlineData("5/8-11", "0.22600", "145.808", "19210", "27120", "150.08", "211.88")]
    [InlineData("5/8-18", "0.25596", "165.134", "21756", "30715", "169.97", "239.96")]
    [InlineData("3/4-10", "0.33446", "215.782", "28429", "40135", "266.52", "376.27")]
    [InlineData("3/4-16", "0.37296", "240.620", "31702", "44755", "297.20", "419.58")]
    public void Inch_threads(string name, string areaInches, string area, string proof5, string proof8, string torque5, string torque8)
    {
        var thread = Thread(name);
        Ask.Printed(areaInches, thread.StressAreaSquareMillimetres / 645.16);
        Ask.Printed(area, thread.StressAreaSquareMillimetres);
        foreach (var (grade, proof, torque) in ((string, string, string)[])[("5", proof5, torque5), ("8", proof8, torque8)])
        {
            Ask.Printed(proof, Ask.Answer($"strength thread={name} class={grade}").In(Units.PoundForce).Values[0].Value);
            Ask.Printed(torque, Ask.Answer($"torque thread={name} class={grade} k=0.20").In(Units.PoundForceFoot).Values[0].Value);
        }
    }

    // A published shop table, whole lbf·ft (K = 0.20, 75 % of proof).
    [Theory]
    [InlineData("3/8-16", 31, 44)]
    [InlineData("1/2-13", 75, 106)]
    [InlineData("5/8-11", 150, 212)]
    [InlineData("3/4-10", 267, 376)]
    [InlineData("3/4-16", 297, 420)]
    public void Inch_torques_match_a_shop_table(string name, double torque5, double torque8)
    {
        Assert.Equal(torque5, Math.Round(Ask.Answer($"torque thread={name} class=5").In(Units.PoundForceFoot).Values[0].Value));
        Assert.Equal(torque8, Math.Round(Ask.Answer($"torque thread={name} class=8").In(Units.PoundForceFoot).Values[0].Value));
    }

    [Theory]
    [InlineData("m10", "M10")]
    [InlineData("M10x1.5", "M10")]
    [InlineData("M10X1.25", "M10x1.25")]
    [InlineData("M10 × 1.25", "M10x1.25")]
    [InlineData("M 12 x 1.5", "M12x1.5")]
    [InlineData("3/8-16", "3/8-16 UNC")]
    [InlineData("3/8 in-24 unf", "3/8-24 UNF")]
    [InlineData("#10-32", "10-32 UNF")]
    [InlineData("1-8", "1-8 UNC")]
    public void Threads_are_read_as_people_write_them(string text, string designation) =>
        Assert.Equal(designation, Thread(text).Designation);

    [Theory]
    [InlineData("M11")]
    [InlineData("M10x1.2")]
    [InlineData("M10x2")]
    [InlineData("M10x")]
    [InlineData("10x1.25")]
    [InlineData("3/8-17")]
    [InlineData("3/8-16 UNF")]
    [InlineData("13/32-16")]
    [InlineData("")]
    public void What_is_no_thread_of_the_standards_is_refused(string text)
    {
        var fault = ScrewThread.Read("thread", text).Faults.Single();
        Assert.Equal("thread", fault.Place);
        Assert.NotEmpty(fault.Mend);
    }

    [Fact]
    public void A_class_goes_with_its_system()
    {
        Assert.False(Ask.Result("strength thread=M10 class=5").IsGood);
        Assert.False(Ask.Result("strength thread=3/8-16 class=8.8").IsGood);
        Assert.False(Ask.Result("strength thread=10-24 class=5").IsGood);
    }

    [Fact]
    public void A_finer_pitch_has_the_larger_stress_area()
    {
        var pitches = new[] { "M12", "M12x1.5", "M12x1.25", "M12x1" }.Select(name => Thread(name).StressAreaSquareMillimetres).ToList();
        Assert.Equal(pitches.Order(), pitches);
    }

    private static bool Close(double expected, double actual) => Math.Abs(expected - actual) < 0.5;
}
