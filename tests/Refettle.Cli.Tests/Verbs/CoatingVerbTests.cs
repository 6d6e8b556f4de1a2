using System.Text.Json;

namespace Refettle.Cli.Tests.Verbs;

public sealed class CoatingVerbTests
{
    private static Bench Described()
    {
        var bench = new Bench().WithCar();
        Assert.True(bench.Run("product", "add", "epoxy", "sheet=PDS 12, issue 3", "kind=epoxy-primer", "recoat=16h..7d@20C, 10h..open@30C",
            "pot-life=1.5h", "dry=80um", "solids=55%", "hazards=epoxy-resin") == ExitCode.Good, bench.Error);
        Assert.True(bench.Run("product", "add", "top", "loss=40%", "--by", "me") == ExitCode.Good, bench.Error);
        Assert.True(bench.Run("coating", "system", "chassis", "epoxy", "top*2") == ExitCode.Good, bench.Error);
        Assert.True(bench.Run("coating", "for", "chassis", "axle=3.5m2", "wheel") == ExitCode.Good, bench.Error);
        return bench;
    }

    [Fact]
    public void Figures_keep_their_units_and_who_says_them()
    {
        using var bench = Described();
        var product = bench.Json("product", "show", "epoxy").GetProperty("product");
        Assert.Equal(90, Figure(product, "pot-life").GetProperty("value").GetDecimal());
        Assert.Equal("maker", Figure(product, "pot-life").GetProperty("origin").GetString());
        Assert.Equal((168, true),
            (product.GetProperty("recoat")[0].GetProperty("closesHours").GetDecimal(),
                product.GetProperty("recoat")[1].GetProperty("hasNoEnd").GetBoolean()));
        Assert.Equal("user", Figure(bench.Json("product", "show", "top").GetProperty("product"), "loss").GetProperty("origin").GetString());
    }

    [Fact]
    public void The_plan_shows_sessions_with_cautions_steps_and_masks()
    {
        using var bench = Described();
        var shown = bench.Out("coating", "plan");
        Assert.Contains("2 sessions, fewer will not do", shown, StringComparison.Ordinal);
        Assert.Contains("air-fed", shown, StringComparison.Ordinal);
        Assert.Contains("145 µm wet for 80 µm dry", shown, StringComparison.Ordinal);
        Assert.Contains("Axle: keep bare", shown, StringComparison.Ordinal);
        Assert.Contains("[flash-off is not entered", shown, StringComparison.Ordinal);
        var session = bench.Json("coating", "plan").GetProperty("sessions")[1];
        Assert.NotEqual(0, session.GetProperty("cautions").GetArrayLength());
        Assert.Equal(["axle", "wheel"], session.GetProperty("parts").EnumerateArray().Select(part => part.GetProperty("part").GetString()));
    }

    [Fact]
    public void What_fits_into_the_spray_corner_is_said_and_kept_to()
    {
        using var bench = Described();
        Assert.Contains("1 piece and 4 m² fit in at one time",
            bench.Out("facility", "add", "corner", "--kind", "spray-corner", "--pieces", "1", "--area", "4m2"), StringComparison.Ordinal);
        Assert.Contains("4 sessions, fewer will not do", bench.Out("coating", "plan"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, bench.Run("facility", "add", "table", "--kind", "bench", "--pieces", "3"));
        Assert.Contains("no spray corner", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_coat_that_is_on_is_due_for_the_next_and_bad_air_is_told_of()
    {
        using var bench = Described();
        Assert.Contains("too fresh", bench.Out("coat", "epoxy", "axle", "--air", "20C", "--humidity", "90%"), StringComparison.Ordinal);
        Assert.Contains("90 % humidity", bench.Error, StringComparison.Ordinal);
        var needs = bench.Json("coating", "buy").GetProperty("needs");
        Assert.Equal("wheel", needs[0].GetProperty("withoutArea")[0].GetString());
        Assert.Contains("no area is entered", bench.Out("coating", "buy"), StringComparison.Ordinal);
        bench.Out("coat", "epoxy", "wheel", "--at", "23:50");
        bench.Out("coating", "plan");
        Assert.Contains("is still to come", bench.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pot-life=4", "unit")]
    [InlineData("recoat=16h..7d", "@20C")]
    [InlineData("recoat=7d..16h@20C", "shortest time first")]
    [InlineData("recoat=100000000h..open@20C", "100000000 h or longer at 20 °C")]
    [InlineData("solids=140%", "1 to 100")]
    [InlineData("kind=epoxi-primer", "epoxy-primer")]
    [InlineData("potlife=4h", "pot-life")]
    public void What_is_wrong_is_said_with_what_is_right(string value, string mend)
    {
        using var bench = Described();
        Assert.Equal(ExitCode.Faults, bench.Run("product", "set", "epoxy", value));
        Assert.Contains(mend, bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_of_a_sheet_needs_the_sheet()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("product", "add", "epoxy", "solids=55%"));
        Assert.Contains("sheet=", bench.Error, StringComparison.Ordinal);
    }

    private static JsonElement Figure(JsonElement product, string kind) =>
        product.GetProperty("figures").EnumerateArray().Single(figure => figure.GetProperty("kind").GetString() == kind);
}
