using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.CloseUp.Refit;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>What is handed in, by what the plan drains, takes off and coats. Asbestos: 29 CFR 1910.1001 App. F (wet,
/// no compressed air, sealed and labelled); refrigerant: Regulation (EU) 2024/573, which repealed 517/2014; rags: 29 CFR 1926.252(e) (fire
/// resistant covered containers). The rest is common practice.</summary>
public sealed class WasteTests
{
    private static readonly Verdict New = new("battery", VerdictKind.Replace, DoneBy.Self, null);

    [Fact]
    public void Each_kind_comes_from_what_the_plan_does()
    {
        var waste = HandIn(Car() with
        {
            Verdicts = [New, New with { Part = "bag" }, New with { Part = "wheel" },
                New with { Part = "arm", Kind = VerdictKind.Refurbish }]
        }).Waste;
        Assert.Equal(
            [WasteKind.Refrigerant, WasteKind.BrakeFluid, WasteKind.Coolant, WasteKind.OtherFluid, WasteKind.SuspectedAsbestos,
                WasteKind.Dust, WasteKind.Paint, WasteKind.Solvent, WasteKind.Rags, WasteKind.Battery, WasteKind.Airbag, WasteKind.Tyre],
            waste.Select(one => one.Kind));
        Assert.Equal(["Shoes", "Cover gasket, by its name"], waste.Single(one => one.Kind == WasteKind.SuspectedAsbestos).From);
        Assert.Equal("Gearbox oil", waste.Single(one => one.Kind == WasteKind.OtherFluid).Says);
        Assert.All(waste, one => Assert.True(one.Keep.Length > 10 && one.HandIn.Length > 10));
    }

    [Theory]
    [InlineData(WasteKind.SuspectedAsbestos, "Wet;", "never compressed air", "labelled")]
    [InlineData(WasteKind.Refrigerant, "2024/573", "Licensed people recover it", "stays with them")]
    [InlineData(WasteKind.Rags, "closed metal box", "heat themselves", "never a heap")]
    public void The_caution_says_what_the_rule_says(WasteKind kind, params string[] words)
    {
        var keep = WasteRules.Of(kind, "x", []).Keep;
        Assert.All(words, word => Assert.Contains(word, keep, StringComparison.Ordinal));
    }

    /// <summary>Without a verdict the battery goes back on: it is no waste. What only comes off to give way is none either.</summary>
    [Fact]
    public void What_goes_back_is_not_handed_in()
    {
        var kinds = HandIn(Car()).Waste.Select(one => one.Kind).ToList();
        Assert.DoesNotContain(WasteKind.Battery, kinds);
        Assert.DoesNotContain(WasteKind.Airbag, kinds);
        Assert.DoesNotContain(WasteKind.Tyre, kinds);
        Assert.DoesNotContain(WasteKind.Paint, kinds);
    }

    /// <summary>The owner says that he handed it in. While more is still to come he will go once more.</summary>
    [Fact]
    public void It_is_handed_in_once_nothing_more_comes()
    {
        var handed = new CarCalendar { Marks = [new("hand-in", TaskProgress.Done, new(2027, 3, 1, 12, 0))] };
        Assert.Null(HandIn(Car() with { Calendar = handed }).Mark);
        var drained = Car() with { Done = [Fact.State("coolant-drained")] };
        var (before, after) = (RefitPlanner.Of(new(drained, [], [])),
            RefitPlanner.Of(new(drained with { Calendar = handed, Disturbed = [new(drained.Done[0], ["hand-in"])] }, [], [])));
        Assert.Contains(before.Checks, check => check.Id == "hand-in");
        Assert.DoesNotContain(after.Checks, check => check.Id == "hand-in");
    }

    /// <summary>The part is long on again: no task speaks of its paint any more.</summary>
    [Fact]
    public void What_was_coated_since_is_handed_in_once_more()
    {
        AppliedCoat Coat(int hour) => new("top", ["arm"], new(2027, 3, 1, hour, 0), 1, null, null, null, []);
        var handed = new CarCalendar { Marks = [new("hand-in", TaskProgress.Done, new(2027, 3, 1, 12, 0))] };
        var drained = Car() with
        { Done = [Fact.State("coolant-drained")], Disturbed = [new(Fact.State("coolant-drained"), ["hand-in"])], Calendar = handed };
        Car Coated(int hour) =>
            drained with { Coating = new() { Products = [new() { Id = "top", Name = "Top coat" }], Applied = [Coat(hour)] } };
        var again = Assert.Single(RefitPlanner.Of(new(Coated(13), [], [])).Checks, check => check.Id == "hand-in");
        Assert.Equal(["Top coat"], again.Waste.Single(one => one.Kind == WasteKind.Paint).From);
        Assert.DoesNotContain(RefitPlanner.Of(new(Coated(11), [], [])).Checks, check => check.Id == "hand-in");
    }

    [Fact]
    public void It_is_handed_in_after_what_makes_it()
    {
        var network = Network(Car() with { Verdicts = [New with { Part = "arm", Kind = VerdictKind.Refurbish }] });
        var before = network.Links.Where(link => link.After == "hand-in")
            .Select(link => network.Tasks.Single(task => task.Id == link.Before)).ToList();
        Assert.Contains(before, task => task.Kind == TaskKind.Coat);
        Assert.Contains(before, task => task.Steps.Any(step => step.Fact == Fact.Off("shoes")));
        Assert.Contains(before, task => task.Steps.Any(step => step.Fact == Fact.State("coolant-drained")));
    }

    /// <summary>A pipe with brake fluid in it is opened, and nobody drained the circuit first.</summary>
    [Fact]
    public void Brake_fluid_runs_out_of_an_opened_pipe_too()
    {
        var car = Car() with { Structure = Car().Structure with { States = [] } };
        var waste = HandIn(car, Fact.Open("pipe")).Waste;
        Assert.Equal([WasteKind.BrakeFluid, WasteKind.Rags], waste.Select(one => one.Kind));
    }

    /// <summary>Common practice, no source: what nobody drains first comes off with the part.</summary>
    [Theory]
    [InlineData(Hazard.HotCoolant, WasteKind.Coolant, "Coolant")]
    [InlineData(Hazard.Fuel, WasteKind.Fuel, "Fuel")]
    [InlineData(Hazard.Oil, WasteKind.OtherFluid, "Oil")]
    [InlineData(Hazard.BrakeFluid, WasteKind.BrakeFluid, "Brake fluid")]
    [InlineData(Hazard.Refrigerant, WasteKind.Refrigerant, "Refrigerant")]
    public void A_fluid_that_no_state_drains_comes_off_with_its_part(Hazard hazard, WasteKind kind, string says)
    {
        var car = Holding(hazard);
        var waste = Assert.Single(HandIn(car).Waste, one => one.Kind == kind);
        Assert.Equal((says, "Arm"), (waste.Says, Assert.Single(waste.From)));
        Assert.Contains(Network(car).Links, link => link.Before == "strip.arm" && link.After == "hand-in");
    }

    /// <summary>The description says what a state lets out; its name says nothing, and the part's hazard is not counted again.</summary>
    [Fact]
    public void What_a_state_drains_is_said_by_the_description()
    {
        State Empty(Hazard fluid) =>
            new()
            {
                Id = "circuit-empty",
                Name = "Circuit empty",
                Drains = [fluid],
                Ways = [new() { Id = "hands", Tool = "hands", Open = new(9), Close = new(9) }]
            };
        var coolant = Holding(Hazard.HotCoolant);
        var waste = HandIn(coolant with { Structure = coolant.Structure with { States = [Empty(Hazard.HotCoolant)] } }).Waste
            .Where(one => one.Kind == WasteKind.Coolant);
        Assert.Equal(("Coolant", 0), (Assert.Single(waste).Says, waste.Single().From.Count));
        var oil = Holding(Hazard.Oil);
        var first = oil.Structure.Joints
            .Select(joint => joint.Id == "arm-bolt"
                ? joint with { Ways = [joint.Ways[0] with { Clear = [Fact.State("circuit-empty")] }] }
                : joint).ToValueList();
        Assert.Equal(["Circuit empty"],
            Assert.Single(HandIn(oil with { Structure = oil.Structure with { States = [Empty(Hazard.Oil)], Joints = first } }).Waste,
                one => one.Kind == WasteKind.OtherFluid).From);
    }

    [Fact]
    public void What_only_a_name_says_is_told_as_such() =>
        Assert.Equal(["gearbox-oil-drained, by its name"], HandIn(Car()).Waste.Single(one => one.Kind == WasteKind.OtherFluid).From);

    /// <summary>A switch with mercury that goes back is no waste; a mat that may hold asbestos is suspect as it comes off.</summary>
    [Fact]
    public void Mercury_and_asbestos_are_found_by_their_hazards()
    {
        Assert.Contains("Arm", Assert.Single(HandIn(Holding(Hazard.Asbestos)).Waste, one => one.Kind == WasteKind.SuspectedAsbestos).From);
        Assert.DoesNotContain(HandIn(Holding(Hazard.Mercury)).Waste, one => one.Kind == WasteKind.Mercury);
        Assert.Equal(["Arm"],
            Assert.Single(HandIn(Holding(Hazard.Mercury) with { Verdicts = [New with { Part = "arm" }] }).Waste,
                one => one.Kind == WasteKind.Mercury).From);
    }

    private static Car Holding(Hazard hazard) => Car() with
    {
        Structure = Car().Structure with
        {
            States = [],
            Joints = Car().Structure.Joints.Where(joint => joint.Id != "pipe").ToValueList(),
            Parts = Car().Structure.Parts.Where(part => part.Id != "cylinder")
                .Select(part => part.Id == "arm" ? part with { Hazards = [hazard] } : part).ToValueList(),
        },
    };

    private static WorkTask HandIn(Car car, params Fact[] goals) => Network(car, goals).Tasks.Single(task => task.Kind == TaskKind.HandIn);

    private static TaskNetwork Network(Car car, params Fact[] goals)
    {
        var all = goals.Length > 0
            ? goals.ToValueList()
            : [.. car.Structure.Parts.Where(part => !part.Fixed).Select(part => Fact.Off(part.Id)),
                .. car.Structure.States.Select(state => Fact.State(state.Id))];
        var plan = new AccessPlanner(new ReducedSolver()).Reach(car, new() { Goals = all });
        return NetworkPlanner.Of(new() { Car = car, Plan = plan });
    }

    private static Car Car() => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            Zones = [new() { Id = "under", Name = "Under", Exposure = 4, Posture = "under" }],
            States = new[] { "refrigerant-recovered", "brakes-drained", "coolant-drained",
                "gearbox-oil-drained" }.Select(id => new State
                { Id = id, Name = id, Ways = [new() { Id = "hands", Tool = "hands", Open = new(9), Close = new(9) }] }).ToValueList(),
            Parts =
            [
                new() { Id = "shell", Name = "Shell", Fixed = true },
                new() { Id = "shoes", Name = "Shoes", Hazards = [Hazard.FrictionDust] },
                new() { Id = "cover-gasket", Name = "Cover gasket" },
                new() { Id = "battery", Name = "Battery", Hazards = [Hazard.BatteryAcid] },
                new() { Id = "bag", Name = "Airbag", Hazards = [Hazard.Airbag] }, new() { Id = "wheel", Name = "Wheel", Roles = ["wheel"] },
                new() { Id = "arm", Name = "Arm", Zone = "under" },
                new() { Id = "cylinder", Name = "Cylinder", Hazards = [Hazard.BrakeFluid] },
            ],
            Joints =
            [
                .. new[] { "shoes", "cover-gasket", "battery", "bag", "wheel",
                    "arm" }.Select(part => new Joint
                        { Id = $"{part}-bolt", Holds = [part, "shell"],
                            Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(5), Close = new(5) }] }),
                new() { Id = "pipe", Kind = JointKind.Pipe, Holds = ["cylinder", "shell"],
                    Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(5), Close = new(5) }] },
            ],
        },
    };
}
