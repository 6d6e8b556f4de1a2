using CsCheck;
using NodaTime;
using Refettle.Coating;
using Refettle.Logbook;

namespace Refettle.Tests.Coating;

public sealed class CoatingPlannerTests
{
    private static ClimateExpected Air(decimal celsius, decimal humidity) =>
        new([.. Enumerable.Range(1, 12).Select(month => new ClimateMonth(month, celsius, humidity, Origin.User))]);

    [Fact]
    public void Parts_alike_go_together_as_soon_as_their_window_opens()
    {
        var plan = Coatings.Plan(Coatings.Car());
        Assert.Equal([("epoxy", new LocalDateTime(2027, 3, 1, 10, 0)), ("top", new(2027, 3, 2, 10, 0))],
            plan.Sessions.Select(session => (session.Product, session.At)));
        Assert.All(plan.Sessions, session => Assert.Equal(["axle", "tank"], session.Parts.Select(part => part.Part)));
        Assert.Equal(new LocalDateTime(2027, 3, 2, 2, 0), plan.Sessions[1].Parts[0].NotBefore);
        Assert.Equal(new LocalDateTime(2027, 3, 8, 10, 0), plan.Sessions[1].Parts[0].NotAfter);
        Assert.True(plan.IsProven);
    }

    /// <summary>Axle and tank are alike and go together, unless only one of them fits in at one time. The tank of 2 m²
    /// does not fit into 1.8 m² at all.</summary>
    [Theory]
    [InlineData(2, null, 2, 0)]
    [InlineData(1, null, 4, 0)]
    [InlineData(null, 3.5, 2, 0)]
    [InlineData(null, 3.4, 4, 0)]
    [InlineData(null, 1.8, 2, 1)]
    public void No_more_goes_on_at_one_time_than_fits_into_the_spray_corner(int? pieces, double? area, int sessions, int unplanned)
    {
        var car = Coatings.Car(new FacilityAdded(new()
        { Id = "corner", Name = "Corner", Kind = FacilityKind.SprayCorner, MostPieces = pieces, MostSquareMetres = (decimal?)area }));
        var plan = Coatings.Plan(car);
        Assert.Equal((sessions, unplanned), (plan.Sessions.Count, plan.Unplanned.Count));
        Assert.All(plan.Unplanned, one => Assert.Contains("1.8 m² fit in", one.Why, StringComparison.Ordinal));
        Assert.Contains(plan.Notes,
            note => note.Place == "spray corner" && note.Found.Contains("your word for Corner", StringComparison.Ordinal));
        Assert.Contains(Coatings.Plan(Coatings.Car()).Notes,
            note => note.Place == "spray corner" && note.Found.Contains("not entered", StringComparison.Ordinal));
    }

    [Fact]
    public void What_finds_no_room_beside_the_others_is_told_of_and_what_is_begun_goes_first()
    {
        Happening[] more =
        [
            new FacilityAdded(new() { Id = "corner", Name = "Corner", Kind = FacilityKind.SprayCorner, MostPieces = 1 }),
            new SpellAdded(new()
                { Id = "one", First = new(2027, 3, 2), From = new(9, 0), Until = new(10, 0), Repeats = new(Rhythm.Daily, 40, []) }),
            new SpellAdded(new()
                { Id = "other", First = new(2027, 3, 3), From = new(9, 0), Until = new(10, 0), Repeats = new(Rhythm.Daily, 40, []) }),
            new CoatApplied(new("epoxy", ["tank"], new(2027, 2, 28, 15, 0), 1, 20, 60, null, [])),
        ];
        var plan = Coatings.Plan(Coatings.Car(more));
        Assert.Equal(["tank"], plan.Sessions.SelectMany(session => session.Parts.Select(part => part.Part)));
        Assert.Contains("no room was found for it", Assert.Single(plan.Unplanned, one => one.Part == "axle").Why, StringComparison.Ordinal);
    }

    /// <summary>One part after the other. Dry to handle after 60 h the second can begin on the fourth day; where that is not entered it can
    /// once the next coat may go on, after 16 h.</summary>
    [Theory]
    [InlineData(60, 4)]
    [InlineData(null, 3)]
    public void A_part_keeps_its_room_until_it_can_be_taken_out(int? handle, int days)
    {
        var epoxy = Coatings.Epoxy with
        {
            Figures = handle is { } hours
                ? [.. Coatings.Epoxy.Figures, new(FigureKind.At, 20, Origin.Maker), new(FigureKind.Handle, hours, Origin.Maker)]
                : Coatings.Epoxy.Figures
        };
        var plan = Coatings.Plan(Coatings.Car(new ProductDescribed(epoxy), new FacilityAdded(Small)));
        Assert.Equal((4, days), (plan.Sessions.Count, Period.DaysBetween(plan.Sessions[0].At.Date, plan.Sessions[3].At.Date)));
        Assert.Contains(plan.Notes, note => note.Found.StartsWith("top: when it is dry is not entered", StringComparison.Ordinal));
    }

    /// <summary>All coats are on the tank, and it hangs in the corner for five days.</summary>
    [Fact]
    public void What_dries_from_before_takes_its_room()
    {
        var slow = Coatings.Top with { Figures = [new(FigureKind.At, 20, Origin.Maker), new(FigureKind.Handle, 120, Origin.Maker)] };
        Happening[] more =
        [
            new ProductDescribed(slow), new FacilityAdded(Small), new CoatingSystemDescribed(new("one", "One", [new("top")])),
            new CoatingChosen(null, [new("tank", null)]), new CoatingChosen("one", [new("tank", 1)]),
            new CoatApplied(new("top", ["tank"], new(2027, 2, 28, 15, 0), 1, 20, 60, null, [])),
        ];
        Assert.True(Coatings.Plan(Coatings.Car(more)).Sessions[0].At >= new LocalDateTime(2027, 3, 5, 15, 0));
    }

    /// <summary>Hired from the 10th to the 14th: two coats of epoxy and top fit into these days, nothing outside.</summary>
    [Fact]
    public void Nothing_is_sprayed_while_the_corner_is_not_there()
    {
        var hired = Small with { MostPieces = null, From = new(2027, 3, 10), Until = new(2027, 3, 14) };
        var plan = Coatings.Plan(Coatings.Car(new FacilityAdded(hired)));
        Assert.Empty(plan.Unplanned);
        Assert.All(plan.Sessions, session => Assert.True(session.At.Date >= hired.From && session.At.Date <= hired.Until));
        var brief = Coatings.Plan(Coatings.Car(new FacilityAdded(hired with { Until = new(2027, 3, 10) })));
        Assert.Contains("not there when you are", brief.Unplanned[0].Why, StringComparison.Ordinal);
        Happening[] evenings = [new FacilityAdded(hired),
            new SpellAdded(new()
                { Id = "theirs", Whose = "corner", First = new(2027, 3, 11), From = new(9, 0), Until = new(12, 0),
                    Repeats = new(Rhythm.Daily, 2, []) })];
        Assert.Equal([11, 13], Coatings.Plan(Coatings.Car(evenings)).Sessions.Select(session => session.At.Day));
    }

    [Fact]
    public void The_check_sees_that_the_corner_is_away_or_still_full()
    {
        var plan = CoatingPlanner.Plan(new(Coatings.Car(), Coatings.Monday, 30)).Value;
        bool IsSound(CoatingPlan held, params Happening[] more) =>
            !CoatingPlanCheck.Of(new(Coatings.Car(more), Coatings.Monday, 30), held).Any();
        Assert.True(IsSound(plan, new FacilityAdded(Small with { MostPieces = 2 })));
        Assert.False(IsSound(plan, new FacilityAdded(Small with { MostPieces = 2, From = new(2027, 3, 3) })));
        Assert.False(IsSound(plan, new FacilityAdded(Small with { MostPieces = 2, Until = plan.Sessions[0].At.Date })));
        Assert.False(IsSound(plan, new FacilityAdded(Small with { MostPieces = 2 }),
            new SpellAdded(new()
            {
                Id = "theirs",
                Whose = "corner",
                First = new(2027, 3, 1),
                From = new(20, 0),
                Until = new(22, 0),
                Repeats = new(Rhythm.Daily, 1, [])
            })));
        var apart = CoatingPlanner.Plan(new(Coatings.Car(new FacilityAdded(Small)), Coatings.Monday, 30)).Value;
        var slow = Coatings.Epoxy with
        { Figures = [.. Coatings.Epoxy.Figures, new(FigureKind.At, 20, Origin.Maker), new(FigureKind.Handle, 60, Origin.Maker)] };
        Assert.True(IsSound(apart, new FacilityAdded(Small)));
        Assert.False(IsSound(apart, new FacilityAdded(Small), new ProductDescribed(slow)));
    }

    /// <summary>Each holds one part; the second goes away with the first day, and epoxy of that day dries until the next morning. Added
    /// up they would take both parts.</summary>
    [Fact]
    public void Of_several_corners_each_has_its_own_days_and_room()
    {
        var slow = new ProductDescribed(Coatings.Epoxy with
        { Figures = [.. Coatings.Epoxy.Figures, new(FigureKind.At, 20, Origin.Maker), new(FigureKind.Handle, 20, Origin.Maker)] });
        var (one, other) = (new FacilityAdded(Small), new FacilityAdded(Small with { Id = "tent", Name = "Tent" }));
        var both = Coatings.Plan(Coatings.Car(slow, one, other));
        Assert.All(both.Sessions, session => Assert.Equal(2, session.Parts.Select(part => part.Corner).Distinct().Count()));
        var brief = Coatings.Plan(
            Coatings.Car(slow, one, new FacilityAdded(Small with { Id = "tent", Name = "Tent", Until = new(2027, 3, 1) })));
        Assert.Empty(brief.Unplanned);
        Assert.All(brief.Sessions, session => Assert.Equal("corner", Assert.Single(session.Parts).Corner));
        Assert.Contains(brief.Notes, note => note.Found.Contains("planned with Corner alone", StringComparison.Ordinal));
        Assert.All(Coatings.Plan(Coatings.Car(one)).Sessions, session => Assert.All(session.Parts, part => Assert.Null(part.Corner)));
    }

    [Fact]
    public void In_a_step_parts_go_by_their_names()
    {
        var named = Coatings.Car();
        var car = named with
        {
            Structure = named.Structure with
            { Parts = named.Structure.Parts.Select(part => part with { Name = $"The {part.Id}" }).ToValueList() }
        };
        Assert.Contains(Coatings.Plan(car).Sessions[0].Steps, step => step.EndsWith(" on every part.", StringComparison.Ordinal));
        Assert.StartsWith("Epoxy: ", PaintNeeds.Words(car, PaintNeeds.Of(car.Coating)[0]), StringComparison.Ordinal);
        Assert.Contains("without The axle; The tank",
            PaintNeeds.Words(car, PaintNeeds.Of(car.Coating)[0] with { WithoutArea = ["axle", "tank"] }), StringComparison.Ordinal);
        var late = Coatings.Plan(car with
        { Coating = Coatings.Car(new CoatApplied(new("epoxy", ["axle"], new(2027, 2, 1, 15, 0), 1, 20, 60, null, []))).Coating });
        Assert.Contains(late.Sessions.SelectMany(session => session.Steps),
            step => step.StartsWith("Too late for The axle", StringComparison.Ordinal));
        Assert.Contains(late.Notes, note => note.Found.StartsWith("The axle; The tank: still on the car", StringComparison.Ordinal));
    }

    private static Facility Small => new() { Id = "corner", Name = "Corner", Kind = FacilityKind.SprayCorner, MostPieces = 1 };

    [Fact]
    public void The_check_sees_more_parts_at_one_time_than_fit_in()
    {
        var car = Coatings.Car();
        var plan = CoatingPlanner.Plan(new(car, Coatings.Monday, 30)).Value;
        Facility Corner(int? pieces, decimal? area) =>
            new()
            {
                Id = "corner",
                Name = "Corner",
                Kind = FacilityKind.SprayCorner,
                Count = 2,
                MostPieces = pieces,
                MostSquareMetres = area
            };
        bool IsSound(Facility corner) =>
            !CoatingPlanCheck.Of(new(car with { Calendar = car.Calendar with { Facilities = [corner] } }, Coatings.Monday, 30), plan).Any();
        Assert.True(IsSound(Corner(1, 1.75m)));
        Assert.False(IsSound(Corner(null, 1.7m)));
        Assert.False(IsSound(Corner(1, null) with { Count = 1 }));
    }

    /// <summary>The axle was primed on Friday, the tank is bare: one top coat serves both, before the axle's seven days are over.</summary>
    [Fact]
    public void A_coat_that_is_on_counts_with_its_own_time()
    {
        var plan = Coatings.Plan(Coatings.Car(new CoatApplied(new("epoxy", ["axle"], new(2027, 2, 26, 15, 0), 1, 20, 60, null, []))));
        Assert.Equal(["epoxy", "top"], plan.Sessions.Select(session => session.Product));
        Assert.Equal(["tank"], plan.Sessions[0].Parts.Select(part => part.Part));
        Assert.Equal(2, plan.Sessions[1].Parts.Count);
    }

    [Fact]
    public void What_is_late_is_done_as_its_sheet_says_and_only_if_that_is_entered()
    {
        var old = new CoatApplied(new("epoxy", ["axle"], new(2027, 2, 10, 15, 0), 1, null, null, null, []));
        var late = Coatings.Plan(Coatings.Car(old)).Sessions.SelectMany(session => session.Parts).Single(part => part.Part == "axle");
        Assert.Equal("abrade with 320 and clean", late.Late);
        var unsaid = Coatings.Plan(Coatings.Car(old, new ProductDescribed(Coatings.Epoxy with { WhenLate = null })));
        Assert.Contains("late=", Assert.Single(unsaid.Unplanned).Mend, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_the_sheets_window_a_part_is_not_planned_but_told_what_to_look_up()
    {
        var plan = Coatings.Plan(Coatings.Car(new ProductDescribed(Coatings.Epoxy with { Recoat = [] })));
        Assert.Empty(plan.Sessions);
        Assert.All(plan.Unplanned, one => Assert.Contains("recoat=", one.Mend, StringComparison.Ordinal));
        Assert.Equal("recoat", MissingFigures.Of(Coatings.Epoxy with { Recoat = [] })[0].Key);
    }

    /// <summary>ISO 12944-7: 3 K above the dew point; ISO 8502-4. 12 °C: at 84 % the dew point is 9.4
    /// °C (Magnus), too near, though the sheet of the top coat forbids nothing; at 70 % 6.7 °C, far enough.</summary>
    [Fact]
    public void No_coat_goes_on_in_air_that_lies_too_near_the_dew_point()
    {
        var reading = new ClimateRead(new(new(2027, 3, 9), 12, 70));
        var plan = Coatings.Plan(Coatings.Car(Air(12, 84), reading));
        Assert.Empty(plan.Sessions);
        Assert.Contains("top", plan.Unplanned.Select(one => one.Product));
        Assert.Contains("above the dew point",
            Coatings.Plan(Coatings.Car(Air(12, 84), new ProductDescribed(Coatings.Epoxy with { Figures = [] }))).Unplanned[0].Why,
            StringComparison.Ordinal);
    }

    /// <summary>Colder than the sheet's 20 °C the window opens later: 16 h become 27.9 h at 12 °C, so that
    /// the next morning is too early.</summary>
    [Fact]
    public void In_the_cold_the_next_coat_waits_longer() =>
        Assert.Equal(new LocalDateTime(2027, 3, 3, 10, 0), Coatings.Plan(Coatings.Car(Air(12, 60))).Sessions[1].At);

    [Fact]
    public void A_window_that_no_spell_lies_in_is_told_of()
    {
        var monthly = new SpellAdded(new()
        {
            Id = "rare",
            First = new(2027, 3, 6),
            From = new(9, 0),
            Until = new(10, 30),
            Repeats = new(Rhythm.Weekly, 2, [IsoDayOfWeek.Saturday])
        });
        var plan = Coatings.Plan(Coatings.Car(monthly));
        Assert.All(plan.Unplanned, one => Assert.Equal((1, "top"), (one.Stage, one.Product)));
        Assert.Equal(2, plan.Unplanned.Count);
    }

    /// <summary>One evening is entered; the top coat goes on a week later only if there is another like it.</summary>
    [Fact]
    public void Sessions_that_count_on_more_spells_than_are_entered_say_so()
    {
        var once = new SpellAdded(new() { Id = "once", First = new(2027, 3, 2), From = new(9, 0), Until = new(10, 0) });
        Assert.Contains(Coatings.Plan(Coatings.Car(once)).Notes,
            note => note.Found.Contains("none is entered after Tue 2027-03-02", StringComparison.Ordinal));
        var always = new SpellAdded(new()
        { Id = "once", First = new(2027, 3, 2), From = new(9, 0), Until = new(10, 0), Repeats = new(Rhythm.Weekly, 1, []) });
        Assert.DoesNotContain(Coatings.Plan(Coatings.Car(always)).Notes,
            note => note.Found.Contains("none is entered", StringComparison.Ordinal));
    }

    [Fact]
    public void Cautions_and_masks_stand_at_every_session_whatever_the_settings()
    {
        var plan = Coatings.Plan(Coatings.Car(new KeptBare(new("axle", "vent", "it has to breathe"))));
        Assert.All(plan.Sessions,
            session => Assert.Contains(session.Cautions, line => line.Contains("hazardous waste", StringComparison.Ordinal)));
        Assert.Contains(plan.Sessions[1].Cautions, line => line.Contains("air-fed", StringComparison.Ordinal));
        Assert.DoesNotContain(plan.Sessions[0].Cautions, line => line.Contains("air-fed", StringComparison.Ordinal));
        Assert.All(plan.Sessions, session => Assert.Contains(session.Masks, spot => spot is { Spot: "vent", Origin: Origin.User }));
    }

    /// <summary>Any weather, any coats that are on: every plan passes the check, and the part that comes on
    /// top never lessens the sessions.</summary>
    [Fact]
    public void Every_plan_keeps_its_windows_and_its_weather() =>
        Gen.Select(Gen.Int[5, 32], Gen.Int[40, 88], Gen.Int[0, 400], Gen.Bool, Gen.Int[1, 3])
            .Sample((celsius, humidity, hoursAgo, isOn, days) =>
    {
        var spell = new SpellAdded(new()
        { Id = "spell", First = new(2027, 3, 1), From = new(18, 30), Until = new(22, 30), Repeats = new(Rhythm.Daily, days, []) });
        Happening[] more = isOn
            ? [spell, Air(celsius, humidity),
                new CoatApplied(new("epoxy", ["axle"], Coatings.Monday.PlusHours(-hoursAgo), 1, celsius, humidity, null, []))]
            : [spell, Air(celsius, humidity)];
        var (both, one) =
            (Coatings.Plan(Coatings.Car(more)), Coatings.Plan(Coatings.Car([.. more, new CoatingChosen(null, [new("tank", null)])])));
        Assert.True(one.Sessions.Count <= both.Sessions.Count);
        Assert.True(both.IsProven);
    }, iter: 150);

    [Fact]
    public void The_check_sees_a_session_that_was_moved_a_caution_that_was_taken_out_and_a_part_that_was_left_out()
    {
        var question = new CoatingQuestion(Coatings.Car(), Coatings.Monday, 30);
        var plan = CoatingPlanner.Plan(question).Value;
        Assert.Empty(CoatingPlanCheck.Of(question, plan));
        Assert.NotEmpty(CoatingPlanCheck.Of(question,
            plan with { Sessions = [plan.Sessions[0], plan.Sessions[1] with { At = plan.Sessions[0].At.PlusHours(15) }] }));
        Assert.NotEmpty(CoatingPlanCheck.Of(question,
            plan with { Sessions = [plan.Sessions[0], plan.Sessions[1] with { At = plan.Sessions[0].At.PlusDays(8) }] }));
        Assert.NotEmpty(
            CoatingPlanCheck.Of(question, plan with { Sessions = [plan.Sessions[0] with { Cautions = [] }, plan.Sessions[1]] }));
        Assert.NotEmpty(CoatingPlanCheck.Of(question, plan with { Sessions = [plan.Sessions[0]], AtLeast = 1 }));
    }
}
