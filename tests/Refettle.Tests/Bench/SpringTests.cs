using CsCheck;
using Refettle.Bench.Springs;

namespace Refettle.Tests.Bench;

public sealed class SpringTests
{
    [Fact]
    public void A_printed_spring_rate() // a published sheet after Shigley's method prints 2197 N/m; computed 2197.016
    {
        const string Line = "spring-rate wire=2.5mm coil=22.25mm active-coils=16 modulus=79.3GPa";
        Ask.Printed("2197.016", 1000 * Ask.Value(Line));
    }

    // Shigley example 10-1, recomputed with Python for its roundings (the book's 4.13 is from memory).
    [Theory]
    [InlineData(0.400, 11.85, "4.1311")]
    [InlineData(0.4005, 11.85, "4.1156")]
    [InlineData(0.400, 11.75, "4.0962")]
    public void An_inch_spring(double coil, double modulus, string expected) => Ask.Printed(expected,
        Ask.Answer($"spring-rate wire=0.037in coil={coil}in active-coils=10.5 modulus={modulus}Mpsi")
            .In(Refettle.Bench.Units.PoundForcePerInch).Values[0].Value);

    // Computed with Python: car spring of 13 mm wire.
    [Theory]
    [InlineData("79.3GPa", "27.306222")]
    [InlineData("78.5GPa", "27.030750")]
    public void A_car_spring(string modulus, string expected) =>
        Ask.Printed(expected, Ask.Value($"spring-rate wire=13mm coil=120mm active-coils=6 modulus={modulus}"));

    [Fact]
    public void Rust_takes_rate_by_the_fourth_power() // 1 − 0.95⁴ = 0.18549
    {
        Ask.Printed("18.549", Ask.Value("rate-lost wire-loss=5%"));
        Gen.Double[0, 0.5].Sample(loss => Math.Abs(
            1 - CoilSpring.RateNewtonsPerMillimetre(13 * (1 - loss), 120, 6, 79300) / CoilSpring.RateNewtonsPerMillimetre(13, 120, 6,
                79300) - CoilSpring.LostShare(loss)) < 1e-12);
    }

    [Fact]
    public void Wheel_rate_and_frequency()
    {
        // A published calculator page prints 28.1 N/mm and 1.43 Hz for 50 N/mm, 0.75, 350 kg; the rest computed with Python.
        Ask.Printed("28.125", Ask.Value("wheel-rate rate=50N/mm motion-ratio=0.75"));
        Ask.Printed("1.4267", Ask.Value("ride-frequency wheel-rate=28.125N/mm mass=350kg"));
        Ask.Printed("24.657534", Ask.Value("wheel-rate rate=50N/mm motion-ratio=0.75 tyre-rate=200N/mm", "with tyre"));
        Ask.Printed("1.33586", Wheel.FrequencyHertz(Wheel.InSeries(28.125, 200), 350));
        Ask.Printed("11.83", Ask.Value("wheel-rate rate=28N/mm motion-ratio=0.65"));
        Ask.Printed("0.967693", Ask.Value("ride-frequency wheel-rate=11.83N/mm mass=320kg"));
    }

    // Computed with g = 9.80665.
    [Theory]
    [InlineData(1.0, "248.405")]
    [InlineData(1.2, "172.504")]
    [InlineData(1.5, "110.402")]
    public void Static_deflection(double frequency, string millimetres) => Ask.Printed(millimetres, Wheel.DeflectionMillimetres(frequency));

    [Fact]
    public void Stored_energy_comes_with_its_caution() // E = k x²/2: 27.3 N/mm over 150 mm, 307 J
    {
        Ask.Printed("307", Ask.Value("spring-energy rate=27.3N/mm travel=150mm"));
        Assert.Contains("compressor", Ask.Answer("spring-energy rate=27.3N/mm travel=150mm").Cautions.Single());
    }
}
