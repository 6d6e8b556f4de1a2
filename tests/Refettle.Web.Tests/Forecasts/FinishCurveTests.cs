using NodaTime;
using Refettle.Forecast.OfCar;
using Refettle.Web.Forecasts;

namespace Refettle.Web.Tests.Forecasts;

public sealed class FinishCurveTests
{
    private static readonly LocalDateTime Begin = new(2027, 3, 1, 9, 0);

    private static ShownForecast Forecast(LocalDateTime? date, params ShownChance[] curve) =>
        new("", 100, 1, 0.8, new(null, 0), new(null, 0), new(null, 0), date, null, default, [], [], [], [], [], curve.ToValueList(), [],
            []);

    [Fact]
    public void It_rises_from_the_lower_left_to_the_upper_right_with_the_date_between()
    {
        var curve = FinishCurve.Of(Forecast(Begin.PlusDays(5), new(Begin, 0), new(Begin.PlusDays(5), 0.25), new(Begin.PlusDays(10), 1)))!;
        Assert.Equal("40,150 175,115 310,10", curve.Line);
        Assert.Equal(175, curve.Date);
        Assert.Equal(["1 Mar", "4 Mar", "8 Mar", "11 Mar"], curve.Ticks.Select(tick => tick.Says));
    }

    [Fact]
    public void A_date_beyond_the_drawing_is_left_out_and_one_point_is_no_line()
    {
        Assert.Null(FinishCurve.Of(Forecast(Begin.PlusDays(11), new(Begin, 0), new(Begin.PlusDays(10), 1)))!.Date);
        Assert.Null(FinishCurve.Of(Forecast(null, new ShownChance(Begin, 1))));
    }
}
