using Refettle.Timeline.Spells;

namespace Refettle.Tests.Coating;

public sealed class RecoatHoursTests
{
    /// <summary>Trade's rule of doubling for each 10 K, no standard: 16 h at 20 °C are 32 h at 10 °C and
    /// 27.858 h at 12 °C (worked out from it). It never widens: warmer than the sheet it opens as stated and closes sooner.</summary>
    [Theory]
    [InlineData(20, 20, 16, 168)]
    [InlineData(10, 20, 32, 168)]
    [InlineData(12, 20, 27.858, 168)]
    [InlineData(20, 30, 16, 84)]
    public void One_row_is_scaled_to_the_safe_side(double cold, double warm, double opens, double closes)
    {
        var hours = RecoatHours.Of(Coatings.Epoxy with { Recoat = [Coatings.Epoxy.Recoat[0]] }, cold, warm)!;
        Assert.Equal(opens, hours.Opens, 3);
        Assert.Equal(closes, hours.Closes!.Value, 3);
    }

    /// <summary>Two data sheets of epoxy primers: 16 h to 7 d at 20 °C, 10 h to 3 d at 30 °C. In between the
    /// slower and the quicker of both.</summary>
    [Theory]
    [InlineData(20, 20, 16, 168)]
    [InlineData(30, 30, 10, 72)]
    [InlineData(25, 25, 16, 72)]
    [InlineData(10, 25, 32, 72)]
    [InlineData(30, 40, 10, 36)]
    public void The_sheets_own_rows_come_first(double cold, double warm, double opens, double closes)
    {
        var hours = RecoatHours.Of(Coatings.Epoxy, cold, warm)!;
        Assert.Equal(opens, hours.Opens, 3);
        Assert.Equal(closes, hours.Closes!.Value, 3);
    }

    [Fact]
    public void Without_an_end_on_the_sheet_there_is_none() =>
        Assert.Null(RecoatHours.Of(Coatings.Epoxy with { Recoat = [new(20, 16, null, true, Origin.Maker)] }, 10, 30)!.Closes);

    [Fact]
    public void Without_rows_nothing_is_guessed() => Assert.Null(RecoatHours.Of(Coatings.Top, 20, 20));
}
