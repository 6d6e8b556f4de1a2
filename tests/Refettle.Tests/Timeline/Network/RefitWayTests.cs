using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Checks;
using Refettle.CloseUp.Refit;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>A gearbox that comes out through the cabin and goes in from below: that a way back may differ
/// is common practice, no source.</summary>
public sealed class RefitWayTests
{
    private static readonly RefitWay Below = new()
    {
        Tool = "transmission jack and a helper",
        Takes = new(40),
        Clear = [Fact.Off("shield")],
        Posture = "under",
        Cautions = ["Strap it to the jack."],
        Origin = Origin.User
    };

    [Fact]
    public void It_goes_in_by_its_own_way_before_what_that_asks_for_is_back()
    {
        var plan = Plan(Box(Below));
        Assert.Equal(new Minutes(40), plan.Steps.Single(step => step.Fact == Fact.Off("gearbox")).Cost.Close);
        var network = NetworkPlanner.Of(new() { Car = Box(Below), Plan = plan });
        var fit = Fit(network);
        Assert.Equal((new Minutes(40), "under", true), (fit.Takes, fit.Posture, fit.Uses.Contains(Needed.Helper)));
        Assert.Contains(UsualCautions.Under, fit.Cautions);
        Assert.Contains("Strap it to the jack.", fit.Cautions);
        Assert.Contains(network.Links, link => link.Before == fit.Id && link.After == "refit.shield");
        var cover = network.Tasks.Single(task => task.Kind == TaskKind.Refit && task.Steps.Any(step => step.Fact == Fact.Off("cover")));
        Assert.DoesNotContain(network.Links, link => link.Before == fit.Id && link.After == cover.Id);
        var usual = Fit(NetworkPlanner.Of(new() { Car = Box(null), Plan = Plan(Box(null)) })).Steps.Select(step => step.Fact).ToList();
        Assert.True(usual.IndexOf(Fact.Off("gearbox")) < usual.IndexOf(Fact.Off("cover")));
    }

    [Fact]
    public void What_nothing_takes_off_is_told_of()
    {
        var plan = new AccessPlanner(new ReducedSolver()).Reach(Box(Below), Question.For(Fact.Off("gearbox")));
        var network = NetworkPlanner.Of(new() { Car = Box(Below), Plan = plan });
        Assert.Contains("not as planned", Fit(network).Says, StringComparison.Ordinal);
        Assert.Contains(network.Notes, note => note.Found.Contains("off(shield)", StringComparison.Ordinal));
    }

    [Fact]
    public void Sparks_on_the_way_back_wait_for_the_tank_to_be_away()
    {
        var car = Box(Below with { Tool = "welder", Clear = [] });
        Assert.Contains("off(tank)", Fit(NetworkPlanner.Of(new() { Car = car, Plan = Plan(car) })).Cautions[0], StringComparison.Ordinal);
        var plan = new AccessPlanner(new ReducedSolver()).Reach(car, new() { Goals = [Fact.Off("gearbox"), Fact.Off("tank")] });
        var network = NetworkPlanner.Of(new() { Car = car, Plan = plan });
        Assert.Contains(network.Links,
            link => link.Before == Fit(network).Id
                && network.Tasks.Single(task => task.Id == link.After).Steps.Any(step => step.Fact == Fact.Off("tank")));
    }

    /// <summary>The tool's words say nothing of fire; what is said of the way does. The cautions of fire are those of
    /// the strip (29 CFR 1910.252(a)).</summary>
    [Fact]
    public void A_danger_that_is_said_of_the_way_back_gates_it_and_warns_on_the_sheet()
    {
        var hot = Below with { Tool = "site kit", Clear = [], Danger = Danger.Spark };
        Assert.Contains("off(tank)", Fit(NetworkPlanner.Of(new() { Car = Box(hot), Plan = Plan(Box(hot)) })).Cautions[0],
            StringComparison.Ordinal);
        Assert.Contains(Warned(hot), caution => UsualCautions.OfDanger(Danger.Spark, null).Contains(caution));
        Assert.DoesNotContain(Warned(hot with { Danger = null }), caution => UsualCautions.OfDanger(Danger.Spark, null).Contains(caution));
        var joint = Box(null) with
        {
            Structure = Box(null).Structure with
            { Joints = Box(null).Structure.Joints.Select(one => one.Id == "bolts" ? one with { Refit = hot } : one).ToValueList() }
        };
        var sheet = RefitPlanner.Of(new(joint with { Done = [Fact.Open("bolts")] }, [], []));
        Assert.Contains(sheet.Steps.Single(step => step.Fact == Fact.Open("bolts")).Cautions,
            caution => UsualCautions.OfDanger(Danger.Spark, null).Contains(caution));

        static ValueList<string> Warned(RefitWay way) =>
            RefitPlanner.Of(
                new(Box(way) with { Done = [Fact.Open("bolts"), Fact.Open("screws"), Fact.Off("cover"), Fact.Off("gearbox")] }, [], []))
            .Steps.Single(step => step.Fact == Fact.Off("gearbox")).Cautions;
    }

    [Fact]
    public void The_sheet_puts_it_in_while_the_shield_is_off_and_the_check_sees_when_not()
    {
        var car = Box(Below) with
        {
            Done = [Fact.Open("bolts"), Fact.Open("clips"), Fact.Open("screws"), Fact.Off("cover"), Fact.Off("shield"),
                Fact.Off("gearbox")]
        };
        var sheet = RefitPlanner.Of(new(car, [], []));
        Assert.Empty(RefitCheck.Of(car, sheet));
        var order = sheet.Steps.Select(step => step.Fact).ToList();
        Assert.True(order.IndexOf(Fact.Off("gearbox")) < order.IndexOf(Fact.Off("shield")));
        var late = sheet.Steps.Where(step => step.Fact != Fact.Off("gearbox"))
            .Append(sheet.Steps.Single(step => step.Fact == Fact.Off("gearbox"))).ToValueList();
        Assert.Contains(RefitCheck.Of(car, sheet with { Steps = late }),
            fault => fault.Found.Contains("behind shield", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stance_or_a_circle_on_the_way_back_is_a_fault()
    {
        Assert.Empty(StructureCheck.Of(Box(Below).Structure));
        Assert.Contains(StructureCheck.Of(Box(Below with { Clear = [Fact.State("on-stands")] }).Structure),
            fault => fault.Path == "out.refit.clear[0]");
        Assert.Contains(StructureCheck.Of(Box(Below with { Clear = [Fact.Off("nothing")] }).Structure),
            fault => fault.Path == "out.refit.clear[0]");
        var circle = Box(Below).Structure with { SubAssemblies = [] };
        circle = circle with
        {
            Parts = circle.Parts
                .Select(part => part.Id == "shield"
                    ? part with { Out = new() { Refit = Below with { Clear = [Fact.Off("gearbox")] } } }
                    : part).ToValueList()
        };
        Assert.Contains(StructureCheck.Of(circle),
            fault => fault.Found.StartsWith("circular support that no way can break on the way back together: ", StringComparison.Ordinal)
                && fault.Mend.Contains("refit way", StringComparison.Ordinal));
    }

    private static WorkTask Fit(TaskNetwork network) =>
        network.Tasks.Single(task => task.Kind == TaskKind.Refit && task.Steps.Any(step => step.Fact == Fact.Off("gearbox")));

    private static Plan Plan(Car car) =>
        new AccessPlanner(new ReducedSolver()).Reach(car, new() { Goals = [Fact.Off("gearbox"), Fact.Off("shield")] });

    private static Car Box(RefitWay? back) => new()
    {
        Id = "car",
        Name = "Car",
        Structure = new()
        {
            States = [new()
                { Id = "on-stands", Name = "On stands", IsStance = true,
                    Ways = [new() { Id = "jack", Tool = "jack", Open = new(10), Close = new(10) }] }],
            Parts =
            [
                new() { Id = "body", Name = "Body", Fixed = true }, new() { Id = "cover", Name = "Tunnel cover" },
                new() { Id = "shield", Name = "Shield" }, new() { Id = "tank", Name = "Tank", Hazards = [Hazard.Fuel] },
                new() { Id = "gearbox", Name = "Gearbox",
                    Out = new() { Off = new(10), On = new(12), Clear = [Fact.Off("cover")], Refit = back } },
            ],
            Joints = [Joint("bolts", "gearbox"), Joint("clips", "shield"), Joint("screws", "cover"), Joint("straps", "tank")],
        },
    };

    private static Joint Joint(string id, string part) =>
        new() { Id = id, Holds = [part, "body"], Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(35), Close = new(35) }] };
}
