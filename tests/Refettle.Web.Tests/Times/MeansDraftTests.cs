using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Tests.Garage;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Times;

/// <summary>What is typed on the pages becomes the same entries as at a prompt, and is refused with the same words.</summary>
public sealed class MeansDraftTests
{
    private static readonly Facility Corner = new()
    {
        Id = "corner",
        Name = "Corner",
        Kind = FacilityKind.SprayCorner,
        MostPieces = 6,
        MostSquareMetres = 4.5m,
        From = new(2027, 3, 1)
    };

    private static readonly Facility Yard = new() { Id = "yard", Name = "Yard", Kind = FacilityKind.Place };

    private static readonly OwnTask Polish = new()
    { Id = "polish", Name = "Polish", Takes = new(50), After = ["strip.tank"], Uses = ["yard"], IsUnbroken = true };

    [Fact]
    public async Task What_is_not_typed_stays_as_it_was()
    {
        var history = await HistoryAsync(new FacilityAdded(Corner), new FacilityAdded(Yard), new TaskAdded(Polish));
        Assert.Equal(Corner, new FacilityDraft(Corner).ToHappening(history, "corner").Value.Facility);
        Assert.Equal(Corner with { MostPieces = 4 },
            new FacilityDraft(Corner) { Pieces = "4" }.ToHappening(history, "corner").Value.Facility);
        Assert.Equal(Polish, new OwnTaskDraft(Polish).ToHappening(history, "polish").Value.Task);
        Assert.Empty(new TermsDraft(TaskTerms.None("job.floor") with { Takes = new(90), Parts = [new(30), new(60)], Uses = ["yard"] })
            .ToHappenings(history).Value);
    }

    [Fact]
    public async Task What_fits_in_is_asked_of_a_spray_corner_only()
    {
        var bench = new FacilityDraft(Corner) { Kind = FacilityKind.Bench }.ToHappening(await HistoryAsync(), "corner").Value.Facility;
        Assert.Equal((null, null), (bench.MostPieces, bench.MostSquareMetres));
    }

    [Fact]
    public async Task Faults_are_those_of_the_prompt_and_call_the_thing_by_its_name()
    {
        var history = await HistoryAsync(new FacilityAdded(Yard), new FacilityAdded(Yard with { Id = "bay", Name = "Bay" }));
        var wrong = new FacilityAdded(Corner with { Count = 0, Until = new(2027, 2, 1) });
        Assert.Equal(Named(HappeningCheck.Of(history, wrong), "Corner"),
            new FacilityDraft(Corner) { Count = "0", Last = new(2027, 2, 1) }.ToHappening(history, "corner").Faults);
        var both = Polish with { Uses = ["bay", "yard"] };
        Assert.Equal(Named(HappeningCheck.Of(history, new TaskAdded(both)), "Polish"),
            new OwnTaskDraft(both).ToHappening(history, "polish").Faults);
        Assert.Equal(HappeningCheck.Of(history, new TaskSplit("polish", [new(30)])),
            new TermsDraft(TaskTerms.None("polish")) { Parts = "30" }.ToHappenings(history).Faults);
        Assert.Contains("Write a number.",
            Assert.Single(new OwnTaskDraft(Polish) { Minutes = "long" }.ToHappening(history, "polish").Faults).Mend,
            StringComparison.Ordinal);
        Assert.Contains("Write a whole number.",
            Assert.Single(new FacilityDraft(Corner) { Pieces = "2.5" }.ToHappening(history, "corner").Faults).Mend,
            StringComparison.Ordinal);
    }

    private static IEnumerable<Fault> Named(IEnumerable<Fault> faults, string name) => faults.Select(fault => fault with { Place = name });

    [Fact]
    public async Task Each_thing_that_is_set_for_a_task_is_an_entry_of_its_own()
    {
        var draft = new TermsDraft(TaskTerms.None("job.floor")) { Minutes = "90", Parts = "30 60", NotFrom = new(2027, 3, 1) };
        draft.Uses.Add("yard");
        Assert.Equal(
            [new TaskTimed("job.floor", new(90)), new TaskSplit("job.floor", [new(30), new(60)]),
                new TaskForbidden("job.floor", new(new(2027, 3, 1), new(2027, 3, 1))), new TaskEquipped("job.floor", ["yard"])],
            draft.ToHappenings(await HistoryAsync(new FacilityAdded(Yard))).Value);
        var back = new TermsDraft(TaskTerms.None("job.floor") with { Takes = new(90), Parts = [new(30), new(60)] })
        { Minutes = " ", Parts = "" };
        Assert.Equal([new TaskTimed("job.floor", null), new TaskSplit("job.floor", [])], back.ToHappenings(await HistoryAsync()).Value);
    }

    [Fact]
    public void A_facility_is_told_by_its_name_where_that_is_known() =>
        Assert.EndsWith("uses The yard", TaskWords.Of(Polish, other => other, _ => "The yard"), StringComparison.Ordinal);

    [Fact]
    public void It_is_told_as_one_would_say_it()
    {
        Assert.Equal("Polish, 50 min in one go, after Take the tank off, uses yard", TaskWords.Of(Polish, _ => "Take the tank off"));
        Assert.Equal("takes 90 min, in parts of 30 min + 60 min, not on Mon 2027-03-01, also needs yard",
            TaskWords.Of(TaskTerms.None("polish") with
            { Takes = new(90), Parts = [new(30), new(60)], Not = [new(new(2027, 3, 1), new(2027, 3, 1))], Uses = ["yard"] }));
    }

    private static async Task<CarHistory> HistoryAsync(params Happening[] more)
    {
        using var log = new CarLog(SmallCar.Id, "bench", new FaultyServer().Api, new MemoryKeeper(), TimeProvider.System);
        foreach (var happening in SmallCar.Happenings.Concat(more))
            await log.WriteAsync(happening);
        return CarHistory.Of(SmallCar.Id, log.Entries);
    }
}
