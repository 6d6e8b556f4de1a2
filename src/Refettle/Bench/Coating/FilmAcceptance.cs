namespace Refettle.Bench.Coating;

/// <summary>Whether gauge readings show enough film.</summary>
public static class FilmAcceptance
{
    private static readonly Input<ValueList<double>> Readings =
        Inputs.List("readings", "dry film readings", Units.Micrometre, 0, 5000, 1, 1000);
    private static readonly Input<double> Nominal = Inputs.Quantity("nominal", "specified dry film", Units.Micrometre, 1, 3000);
    private static readonly Input<string> Rule = Inputs.Choice("rule", "rule to judge by", "iso-19840", "sspc-pa2", "imo-pspc")
        .Or("iso-19840", "the usual one for steel in the open");
    private static readonly Input<double> Profile = Inputs.Quantity("profile",
        "taken off each reading for a blasted profile: fine 10, medium 25, coarse 40 µm (ISO 19840)", Units.Micrometre, 0,
        100).Or("0 um", "smooth surface");

    public static BenchNumber Number { get; } = new()
    {
        Name = "film-acceptance",
        Says = "Whether film thickness readings pass",
        Room = "Coating",
        Formula = "ISO 19840: mean ≥ nominal, each ≥ 80 %, at most 20 % of readings below nominal; SSPC-PA 2: each 80 to 120 % of one specified value; IMO PSPC: 90 % of readings ≥ nominal, none below 90 %",
        Source = "ISO 19840 (the 20 % share partly from memory), SSPC-PA 2 of 2012, IMO PSPC, as quoted in trade articles",
        Uncertainty = "A gauge is good to 3 % + 1 µm (assumed); few readings on small parts say little.",
        Inputs = [Readings, Nominal, Rule, Profile],
        Example = "readings=95,88,110,102,99um nominal=90um",
        Work = Work,
    };

    /// <summary>Whether readings in any one unit pass a rule for a nominal value in the same unit.</summary>
    public static bool Passes(ValueList<double> readings, double nominal, string rule)
    {
        var below = readings.Count(reading => reading < nominal) / (double)readings.Count;
        return rule switch
        {
            "iso-19840" => readings.Average() >= nominal && readings.Min() >= 0.8 * nominal && below <= 0.2,
            "sspc-pa2" => readings.Min() >= 0.8 * nominal && readings.Max() <= 1.2 * nominal,
            _ => readings.Min() >= 0.9 * nominal && below <= 0.1,
        };
    }

    private static Result<Outcome> Work(Given given)
    {
        var (nominal, profile) = (given.Of(Nominal), given.Of(Profile));
        var readings = given.Of(Readings).Select(reading => reading - profile).ToValueList();
        return Outcome.Judged(
            [
                new("mean", readings.Average(), Units.Micrometre),
                new("least", readings.Min(), Units.Micrometre),
                new("most", readings.Max(), Units.Micrometre),
                new("readings below nominal", 100.0 * readings.Count(reading => reading < nominal) / readings.Count, Units.Percent),
            ],
            Passes(readings, nominal, given.Of(Rule)) ? "pass" : "fail");
    }
}
