using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>That a wheel does not come off a car that stands on it needs no source.</summary>
public sealed class StanceCheckTests
{
    private static readonly ValueList<Fact> OnStands = [Fact.State("on-stands")];

    [Fact]
    public void What_the_stance_forbids_is_noted_and_not_refused()
    {
        foreach (var step in new[] { new StepDone(Fact.Off("wheel"), null, null), new StepDone(Fact.Open("wheel-axle"), null, null) })
        {
            var note = Assert.Single(HappeningCheck.Of(After(new StanceTaken("on-wheels")), step));
            Assert.Equal(Severity.Note, note.Severity);
            Assert.Contains("on-stands", note.Found, StringComparison.Ordinal);
        }

        Assert.Empty(HappeningCheck.Of(After(new StanceTaken("on-stands")), new StepDone(Fact.Off("wheel"), null, null)));
        Assert.Empty(HappeningCheck.Of(After(new StanceTaken("on-wheels")), new StepDone(Fact.Off("tank"), null, null)));
    }

    [Fact]
    public void A_car_that_is_put_on_its_wheels_without_one_is_noted()
    {
        var history = After(new StanceTaken("on-stands"), new StepDone(Fact.Off("wheel"), null, null));
        Assert.Equal(Severity.Note, Assert.Single(HappeningCheck.Of(history, new StanceTaken("on-wheels"))).Severity);
        Assert.Empty(HappeningCheck.Of(After(new StanceTaken("on-stands")), new StanceTaken("on-wheels")));
    }

    private static CarHistory After(params Happening[] happenings) => SmallCar.After([new StructureAdded("edit", Hung, []), .. happenings]);

    /// <summary>The small car, its wheel to come off on stands only.</summary>
    private static Structure Hung => new()
    {
        Parts = [SmallCar.Structure.Parts.Single(part => part.Id == "wheel") with { Roles = ["wheel"], Out = new() { Clear = OnStands } }],
        Joints = [SmallCar.Structure.Joints.Single(joint => joint.Id == "wheel-axle") with
            { Ways = [new() { Id = "brace", Tool = "wheel brace", Open = new(3), Clear = OnStands }] }],
    };
}
