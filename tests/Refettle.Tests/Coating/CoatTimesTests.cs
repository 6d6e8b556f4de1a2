using Refettle.Coating;
using Refettle.Logbook;

namespace Refettle.Tests.Coating;

/// <summary>Coats entered on a device whose clock is a day off.</summary>
public sealed class CoatTimesTests
{
    [Fact]
    public void A_coat_of_tomorrow_is_fresh_and_told_of()
    {
        var car = Coatings.Car(Coat("epoxy", Coatings.Monday.PlusDays(1)));
        var due = DueCoats.Of(car, Coatings.Monday).Single(one => one.Part == "axle");
        Assert.Equal(CoatStanding.TooEarly, due.Standing);
        Assert.True(due.Opens > Coatings.Monday.PlusDays(1));
        Assert.Contains("is still to come", Assert.Single(CoatTimes.Doubts(car.Coating, Coatings.Monday)).Found, StringComparison.Ordinal);
        Assert.Empty(CoatTimes.Doubts(car.Coating, Coatings.Monday.PlusDays(1)));
    }

    /// <summary>The primer by a phone that is ahead, the first top coat by the garage's machine: by the times alone the top
    /// coat would lie under the primer.</summary>
    [Fact]
    public void Times_that_put_the_top_coat_under_the_primer_give_way_to_the_order_of_entry()
    {
        var car = Coatings.Car(Coat("epoxy", Coatings.Monday.PlusDays(1)), Coat("top", Coatings.Monday.PlusHours(20)));
        var progress = PartProgress.All(car.Coating).Single(one => one.Part == "axle");
        Assert.Equal((1, 1, "top", true), (progress.Stage, progress.CoatsLeft, progress.Last!.Product, progress.IsAsEntered));
        Assert.Empty(progress.Strange);
        Assert.Contains(CoatTimes.Doubts(car.Coating, Coatings.Monday.PlusDays(2)), doubt => doubt.Place == "part axle");
    }

    [Fact]
    public void Coats_entered_late_still_count_by_their_times()
    {
        var car = Coatings.Car(Coat("top", Coatings.Monday.PlusDays(1)), Coat("epoxy", Coatings.Monday));
        var progress = PartProgress.All(car.Coating).Single(one => one.Part == "axle");
        Assert.Equal((1, false), (progress.Stage, progress.IsAsEntered));
        Assert.Empty(CoatTimes.Doubts(car.Coating, Coatings.Monday.PlusDays(2)));
    }

    private static CoatApplied Coat(string product, NodaTime.LocalDateTime at) => new(new(product, ["axle"], at, 1, null, null, null, []));
}
