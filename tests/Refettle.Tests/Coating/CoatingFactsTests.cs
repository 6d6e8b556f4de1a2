using NodaTime;
using Refettle.Access;
using Refettle.Coating;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Coating;

public sealed class CoatingFactsTests
{
    /// <summary>3.5 m², 80 µm, 55 % solids by volume, 40 % loss: 0.848485 L (volume balance, as on paint makers' sheets).</summary>
    [Fact]
    public void The_quantity_to_buy_counts_loss_and_names_parts_without_area()
    {
        var need = PaintNeeds.Of(Coatings.Car().Coating)[0];
        Assert.Equal(0.848485, need.Litres!.Value, 6);
        Assert.True(need.HasLoss);
        var more = PaintNeeds.Of(Coatings.Car(new CoatingChosen("chassis", [new("wheel", null)])).Coating);
        Assert.Equal(["wheel"], more[0].WithoutArea);
        Assert.Null(more[1].Litres);
        Assert.Equal(7, more[1].SquareMetreCoats);
    }

    /// <summary>Air of 16 °C at 60 % has its dew point at 8.2 °C (Magnus with 17.62 and 243.12 °C, WMO guide no. 8; worked out by hand): a
    /// part of 10 °C is less than the 3 K of ISO 12944-7 above it, one of the air's warmth is not.</summary>
    [Theory]
    [InlineData(null, false)]
    [InlineData(10, true)]
    public void A_part_colder_than_the_dew_point_is_told_of(int? surface, bool isTold)
    {
        var coating = Coatings.Car().Coating;
        var doubts = CoatAir.Doubts(coating, new("epoxy", ["axle"], Coatings.Monday, 1, 16, 60, surface, []));
        Assert.Equal(isTold, doubts.Count > 0);
    }

    [Fact]
    public void Paint_for_coats_that_are_on_is_not_bought_again() =>
        Assert.Equal(2,
            PaintNeeds.Of(Coatings.Car(
                new CoatApplied(new("epoxy", ["axle"], Coatings.Monday, 1, null, null, null, []))).Coating)[0].SquareMetreCoats);

    [Theory]
    [InlineData("2027-02-28T20:00:00", CoatStanding.TooEarly)]
    [InlineData("2027-02-28T14:00:00", CoatStanding.Open)]
    [InlineData("2027-02-20T14:00:00", CoatStanding.Late)]
    public void What_is_due_follows_the_sheet(string at, CoatStanding standing)
    {
        var on = NodaTime.Text.LocalDateTimePattern.ExtendedIso.Parse(at).Value;
        var due = DueCoats.Of(Coatings.Car(new CoatApplied(new("epoxy", ["axle"], on, 1, null, null, null, []))), Coatings.Monday)
            .Single(one => one.Part == "axle");
        Assert.Equal((standing, "top", on.PlusHours(16), (LocalDateTime?)on.PlusDays(7)),
            (due.Standing, due.Next, due.Opens!.Value, due.Closes));
        Assert.Equal(standing == CoatStanding.Late ? "abrade with 320 and clean" : null, due.WhenLate);
    }

    /// <summary>Two data sheets of epoxy primers: 16 h at 20 °C, 10 h at 30 °C. It is 30 °C in March; of February nothing is known: the
    /// sheet's 20 °C stand for it, and it is told.</summary>
    [Theory]
    [InlineData("2027-02-28T20:00:00", 16, true)]
    [InlineData("2027-03-01T20:00:00", 10, false)]
    public void Days_of_which_nothing_is_known_count_as_on_the_sheet_and_are_told(string at, int hours, bool isUnsure)
    {
        var on = NodaTime.Text.LocalDateTimePattern.ExtendedIso.Parse(at).Value;
        var car = Coatings.Car(new ClimateExpected([new(3, 30, 50, Origin.User)]),
            new CoatApplied(new("epoxy", ["axle"], on, 1, null, null, null, [])));
        var due = DueCoats.Of(car, on.PlusHours(1)).Single(one => one.Part == "axle");
        Assert.Equal((on.PlusHours(hours), isUnsure), (due.Opens!.Value, due.IsUnsure));
        Assert.Equal(isUnsure, DueCoats.Words(due).Contains("unsure", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("epoxy, top*2", true)]
    [InlineData("epoxy, top*two", false)]
    [InlineData("epoxy, *2", false)]
    [InlineData("top*2*2", false)]
    public void Stages_are_typed_with_their_coats(string text, bool isGood)
    {
        var read = StageWords.Read(text.Split(','));
        Assert.Equal(isGood, read.IsGood);
        if (isGood)
            Assert.Equal([new CoatStage("epoxy"), new CoatStage("top", 2)], read.Value);
    }

    [Fact]
    public void A_coat_out_of_turn_is_not_counted_and_two_coats_can_be_entered_one_by_one()
    {
        CoatApplied On(string product, int hour) => new(new(product, ["axle"], Coatings.Monday.PlusHours(hour), 1, null, null, null, []));
        var progress = PartProgress.All(Coatings.Car(On("top", 0), On("epoxy", 1), On("top", 20)).Coating)
            .Single(part => part.Part == "axle");
        Assert.Equal((1, 1, 1), (progress.Stage, progress.CoatsLeft, progress.Strange.Count));
        Assert.True(PartProgress.All(Coatings.Car(On("epoxy", 1), On("top", 20), On("top", 21)).Coating)
            .Single(part => part.Part == "axle").IsDone);
    }

    [Fact]
    public void Threads_fits_earths_and_brake_faces_stay_bare()
    {
        var car = new Car
        {
            Id = "x",
            Name = "x",
            Structure = SmallCar.Structure with
            {
                Parts = [.. SmallCar.Structure.Parts, new() { Id = "drum", Name = "Drum", Roles = ["brake-drum"] }],
                Joints =
                [
                    new() { Id = "a", Kind = JointKind.PressFit, Holds = ["axle", "wheel"], Ways = [] },
                    new() { Id = "b", Name = "Earth strap bolt", Kind = JointKind.Bolt, Thread = "M8", Holds = ["axle", "body"],
                        Ways = [] },
                    new() { Id = "c", Kind = JointKind.Clip, Holds = ["axle", "drum"], Ways = [] },
                ],
            },
        };
        var spots = KeepBare.Of(car, "axle");
        Assert.Equal(["a", "b", "b", "b"], spots.Select(spot => spot.Joint));
        Assert.Contains(spots, spot => spot.Spot.Contains("threads M8", StringComparison.Ordinal));
        Assert.Contains(spots, spot => spot.Spot.Contains("bright metal", StringComparison.Ordinal));
        Assert.All(spots, spot => Assert.Equal(Origin.CommonPractice, spot.Origin));
        Assert.Single(KeepBare.Of(car, "drum"));
    }

    /// <summary>HSE, motor vehicle repair: isocyanate paint wants air-fed breathing apparatus, filters are not enough. An
    /// unread safety sheet is no excuse.</summary>
    [Theory]
    [InlineData(CoatingHazard.Isocyanate, "air-fed")]
    [InlineData(CoatingHazard.Solvent, "heater")]
    [InlineData(CoatingHazard.Acid, "goggles")]
    [InlineData(CoatingHazard.EpoxyResin, "allergic")]
    public void Each_hazard_has_its_caution_and_an_unread_sheet_has_them_all(CoatingHazard hazard, string word)
    {
        bool Says(CoatingProduct product) =>
            CoatingCautions.Of(product)
                .Any(line => line.Contains(word, StringComparison.Ordinal) && !line.StartsWith("Rust", StringComparison.Ordinal));
        Assert.True(Says(Coatings.Top));
        Assert.True(Says(Coatings.Top with { Hazards = [hazard] }));
        Assert.False(Says(Coatings.Top with { Hazards = [CoatingHazard.NoneNamed] }));
        Assert.Equal(2, CoatingCautions.Of(Coatings.Top with { Hazards = [CoatingHazard.NoneNamed] }).Count);
    }

    [Theory]
    [InlineData("recoat")]
    [InlineData("sheet")]
    [InlineData("figure")]
    [InlineData("rows")]
    public void What_cannot_be_is_refused(string what)
    {
        var product = what switch
        {
            "recoat" => Coatings.Epoxy with { Recoat = [new(20, 16, 8, false, Origin.User)] },
            "sheet" => Coatings.Epoxy with { Sheet = null },
            "figure" => Coatings.Epoxy with { Figures = [new(FigureKind.Solids, 130, Origin.User)] },
            _ => Coatings.Epoxy with { Recoat = [new(20, 16, 80, false, Origin.User), new(20, 10, 80, false, Origin.User)] },
        };
        Assert.NotEmpty(HappeningCheck.Of(SmallCar.After(Coatings.Described), new ProductDescribed(product)));
        Assert.Empty(HappeningCheck.Of(SmallCar.After(Coatings.Described), new ProductDescribed(Coatings.Epoxy)));
    }

    [Fact]
    public void Unknown_products_parts_and_systems_are_named()
    {
        var history = SmallCar.After(Coatings.Described);
        Assert.Contains("epoxy",
            HappeningCheck.Of(history, new CoatApplied(new("epoxi", ["axle"], Coatings.Monday, 1, null, null, null, [])))[0].Mend,
            StringComparison.Ordinal);
        Assert.NotEmpty(HappeningCheck.Of(history, new CoatingChosen("chasis", [new("axle", null)])));
        Assert.NotEmpty(HappeningCheck.Of(history, new KeptBare(new("axel", "vent", null))));
    }
}
