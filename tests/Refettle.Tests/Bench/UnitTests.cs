using System.Diagnostics;
using CsCheck;
using Refettle.Bench;

namespace Refettle.Tests.Bench;

public sealed class UnitTests
{
    /// <summary>Our symbols in the words of GNU units.</summary>
    private static readonly Dictionary<string, string> GnuWords = """
         = 1; % = percent; mm = mm; µm = micrometer; cm = cm; m = m; mil = mil; in = inch; ft = foot; mm² = mm^2; cm² = cm^2;
        m² = m^2; in² = inch^2; ft² = foot^2; L = liter; mL = ml; US gal = gallon; US fl oz = usfluidounce; kg = kg; g = gram;
        lb = pound; h = hour; min = minute; d = day; N = N; kN = kN; lbf = lbf; kgf = kgf; N·m = N m; lbf·ft = lbf ft;
        lbf·in = lbf inch; kgf·m = kgf m; kgf·cm = kgf cm; ozf·in = ounce force inch; MPa = MPa; GPa = GPa; kPa = kPa;
        bar = bar; psi = psi; ksi = ksi; Mpsi = 1e6 psi; N/mm = N/mm; N/m = N/m; lbf/in = lbf/inch; kgf/mm = kgf/mm;
        ° = degree; ′ = arcmin; rad = radian; °/mm = degree/mm; K = K; °F step = degF; Hz = Hz; J = J; m²/L = m^2/liter;
        ft²/US gal = ft^2/gallon
        """.Split([';', '\n'], StringSplitOptions.RemoveEmptyEntries).Select(pair => pair.Split(" = "))
        .ToDictionary(pair => pair[0].Trim(), pair => pair[1].Trim());

    [GnuUnitsFact]
    public void Every_factor_agrees_with_gnu_units()
    {
        var pairs = Units.All.Where(unit => unit.Dimension != Dimension.Temperature)
            .Select(unit => (Unit: unit, Base: Units.All.First(other => other.Dimension == unit.Dimension && other.Factor == 1))).ToList();
        // GNU units prints 15 significant digits on request; its angle of a full turn is exact.
        var answers = Run(pairs.Select(pair => (GnuWords[pair.Unit.Symbol], GnuWords[pair.Base.Symbol])));
        Assert.Equal(pairs.Count, answers.Count);
        Assert.All(pairs.Zip(answers), row => Ask.Near(row.Second, row.First.Unit.To(row.First.Base, 1), 1e-13));
    }

    [GnuUnitsFact]
    public void Temperatures_agree_with_gnu_units()
    {
        var celsius = Run(new[] { -40.0, 0, 32, 68, 212, 800 }.Select(value => ($"tempF({value:0})", "tempC")));
        Assert.All(new[] { -40.0, 0, 32, 68, 212, 800 }.Zip(celsius),
            row => Assert.Equal(row.Second, Units.Fahrenheit.To(Units.Celsius, row.First), 10));
    }

    // GNU units 2.22 and exact products of the definitions (NIST SP 811), 12 digits.
    [Theory]
    [InlineData("1lbf·ft", "N·m", 1.3558179483314004)]
    [InlineData("1lbf·in", "N·m", 0.1129848290276167)]
    [InlineData("1kgf·m", "N·m", 9.80665)]
    [InlineData("1kgf·cm", "N·m", 0.0980665)]
    [InlineData("1N·m", "lbf·ft", 0.737562149277)]
    [InlineData("1N·m", "kgf·m", 0.101971621298)]
    [InlineData("1ozf·in", "N·m", 0.00706155181422604)]
    [InlineData("1lbf", "N", 4.4482216152605)]
    [InlineData("1psi", "kPa", 6.89475729317)]
    [InlineData("1lbf/in", "N/mm", 0.175126835246)]
    [InlineData("1kgf/mm", "N/mm", 9.80665)]
    [InlineData("1gal", "L", 3.785411784)]
    [InlineData("1ft2/gal", "m²/L", 0.0245423867471)]
    [InlineData("1mil", "µm", 25.4)]
    public void Conversions_hold_to_twelve_digits(string value, string to, double expected) =>
        Ask.Near(expected, Ask.Value($"convert value={value} to={to}"), 5e-12);

    [Theory]
    [InlineData("48Nm", 48)]
    [InlineData("48 N·m", 48)]
    [InlineData("48 n-m", 48)]
    [InlineData("48 N*m", 48)]
    [InlineData("35 ft-lb", 47.453628)]
    [InlineData("35 LBF.FT", 47.453628)]
    [InlineData("4.9kgm", 48.052585)]
    [InlineData("4.9 kgf·m", 48.052585)]
    [InlineData("+4.8e1 Nm", 48)]
    public void Torque_is_read_as_people_write_it(string text, double newtonMetres) =>
        Assert.Equal(newtonMetres, Measure.Read("torque", text, Dimension.Torque).Value.In(Units.NewtonMetre), 5);

    [Theory]
    [InlineData("3/8 in", 9.525)]
    [InlineData("3/8\"", 9.525)]
    [InlineData("1 1/2 in", 38.1)]
    [InlineData("-1/8in", -3.175)]
    [InlineData("−2 mm", -2)]
    [InlineData(".5mm", 0.5)]
    [InlineData("20 mils", 0.508)]
    [InlineData("50 μm", 0.05)]
    public void Lengths_may_be_fractions(string text, double millimetres) =>
        Assert.Equal(millimetres, Measure.Read("length", text, Dimension.Length).Value.In(Units.Millimetre), 9);

    [Theory]
    [InlineData("48,5 Nm", "decimal point")]
    [InlineData("1.5/2 Nm", "fraction")]
    [InlineData("48", "no unit")]
    [InlineData("Nm", "not a number")]
    [InlineData("1/0 Nm", "not a number")]
    [InlineData("NaN Nm", "not a number")]
    [InlineData("1e999 Nm", "not a number")]
    [InlineData("1e30 Nm", "more than anything")]
    [InlineData("48 mm", "length")]
    [InlineData("48 bananas", "bananas")]
    public void What_cannot_be_read_is_told(string text, string says)
    {
        var fault = Measure.Read("torque", text, Dimension.Torque).Faults.Single();
        Assert.Contains(says, fault.ToString());
        Assert.Contains("lbf·ft", fault.Mend);
    }

    [Fact]
    public void Conversion_there_and_back_is_the_same()
    {
        // Chosen from the pairs that fit: of any two units so few do that the generator now and then gave up.
        var pairs = Units.All.SelectMany(from => Units.All.Where(to => to.Dimension == from.Dimension), (from, to) => (from, to)).ToArray();
        Gen.Select(Gen.Int[0, pairs.Length - 1], Gen.Double[-1e6, 1e6]).Sample((pair, value) =>
        {
            var (one, other) = pairs[pair];
            return Math.Abs(other.To(one, one.To(other, value)) - value) <= 1e-9 * Math.Max(1, Math.Abs(value));
        });
    }

    [Fact]
    public void A_measure_is_read_as_it_is_written()
    {
        Gen.Select(Gen.Int[0, Units.All.Count - 1], Gen.Double[0.001, 1e6]).Sample((place, value) =>
        {
            var measure = new Measure(value, Units.All[place]);
            var again = Measure.Read("x", measure.ToString(), measure.Unit.Dimension);
            return again.IsGood && again.Value.Unit == measure.Unit && Math.Abs(again.Value.Value - value) <= value * 6e-4;
        });
    }

    [Fact]
    public void Unlike_dimensions_do_not_convert()
    {
        Assert.Throws<InvalidOperationException>(() => Units.Newton.To(Units.NewtonMetre, 1));
        Assert.False(Ask.Result("convert value=1N to=mm").IsGood);
    }

    private static List<double> Run(IEnumerable<(string From, string To)> pairs)
    {
        var results = new List<double>();
        foreach (var (from, to) in pairs)
        {
            using var process =
                Process.Start(new ProcessStartInfo("units", ["-t", "-o", "%.15g", from, to]) { RedirectStandardOutput = true })!;
            results.Add(double.Parse(process.StandardOutput.ReadToEnd().Trim()));
            process.WaitForExit();
        }

        return results;
    }
}

/// <summary>Skipped, by name, on a machine without GNU units (Debian package <c>units</c>).</summary>
internal sealed class GnuUnitsFactAttribute : FactAttribute
{
    public GnuUnitsFactAttribute()
    {
        if (!Environment.GetEnvironmentVariable("PATH")!.Split(':').Any(folder => File.Exists(Path.Combine(folder, "units"))))
            Skip = "GNU units is not installed (apt-get install units)";
    }
}
