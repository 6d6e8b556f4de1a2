using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;
using Refettle.Timeline;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>What was opened is checked once it is closed, however long ago that was: common practice, no source.</summary>
public sealed class EndChecksTests
{
    private static readonly Structure Rear = new()
    {
        Zones = [new() { Id = "rear", Name = "Rear", Posture = "under" }],
        Parts =
        [
            new() { Id = "body", Name = "Body", Fixed = true },
            new() { Id = "axle", Name = "Rear axle", Zone = "rear" },
            new() { Id = "hose", Name = "Brake hose", Zone = "rear", Hazards = [Hazard.BrakeFluid] },
            new() { Id = "cover", Name = "Cover" },
        ],
        Joints =
        [
            new() { Id = "link-bolt", Kind = JointKind.Bolt, Holds = ["axle", "body"], Ways = [], AtRideHeight = true },
            new() { Id = "union", Kind = JointKind.Pipe, Holds = ["hose", "axle"], Ways = [] },
            new() { Id = "screws", Kind = JointKind.Screw, Holds = ["cover", "body"],
                Ways = [new() { Id = "driver", Tool = "screwdriver", Open = new(5), Close = new(6) }] },
        ],
        States =
        [
            new() { Id = Car.OnWheels, Name = "On its wheels", IsStance = true, Ways = [] },
            new() { Id = "lifted", Name = "Lifted", IsStance = true, Ways = [] },
            new() { Id = "brakes-drained", Name = "Brakes drained", Drains = [Hazard.BrakeFluid],
                Ways = [new() { Id = "pump", Tool = "pump", Open = new(20), Close = new(60) }] },
        ],
    };

    private static readonly string[] OfRubber = ["check.alignment", "check.ride-height", "check.settle"];
    private static readonly string[] OfRoad = ["check.again", "check.road-test"];

    [Fact]
    public void They_stay_due_when_all_is_closed_until_they_are_marked()
    {
        Assert.Equal(["check.again", "check.bleed", "check.road-test"], Due(Opened("union")));
        Assert.Equal(["check.again", "check.bleed", "check.road-test"], Due(Opened("union"), Closed("union")));
        Assert.Equal(OfRoad, Due(Opened("union"), Closed("union"), Done("check.bleed")));
        Assert.Empty(Due(Opened("union"), Closed("union"), Done("check.bleed"), Done("check.road-test"), Done("check.again")));
        Assert.Empty(Due(Opened("screws"), Closed("screws")));
    }

    [Fact]
    public void They_come_again_when_a_joint_is_opened_again_or_the_mark_is_taken_back()
    {
        Happening[] bled = [Opened("union"), Closed("union"), Done("check.bleed")];
        Assert.Contains("check.bleed", Due([.. bled, Opened("union"), Closed("union")]));
        Assert.DoesNotContain("check.bleed", Due([.. bled, Opened("screws"), Opened("link-bolt"), Closed("link-bolt")]));
        Assert.Contains("check.bleed", Due([.. bled, new TaskMarked(new("check.bleed", TaskProgress.Ahead, new(2027, 3, 1, 10, 0)))]));
    }

    [Fact]
    public void What_is_marked_while_a_joint_is_open_is_told_and_stays_due()
    {
        var network = Network(Opened("union"), Done("check.bleed"));
        Assert.Contains(network.Notes,
            note => note.Place == "task check.bleed" && note.Found.Contains("open(union)", StringComparison.Ordinal));
        Assert.Null(network.Tasks.Single(task => task.Id == "check.bleed").Mark);
        Assert.Contains("check.bleed", Due(Opened("union"), Done("check.bleed"), Closed("union")));
    }

    [Fact]
    public void Who_fills_drained_brakes_has_bled_them()
    {
        Assert.DoesNotContain("check.bleed", Due(new StepDone(Fact.State("brakes-drained"), null, null), Opened("union"), Closed("union")));
        Assert.DoesNotContain("check.bleed",
            Due(new StepDone(Fact.State("brakes-drained"), null, null), Opened("union"), Closed("union"),
                new StepReversed(Fact.State("brakes-drained"), null)));
        Assert.Contains("check.bleed",
            Due(new StepDone(Fact.State("brakes-drained"), null, null), new StepReversed(Fact.State("brakes-drained"), null),
                Opened("union"), Closed("union")));
    }

    [Theory]
    [InlineData(Tightness.Torqued, Car.OnWheels, false)]
    [InlineData(Tightness.Torqued, "lifted", true)]
    [InlineData(Tightness.Snug, Car.OnWheels, true)]
    public void A_torque_on_the_wheels_settles_bonded_rubber(Tightness how, string stance, bool isDue)
    {
        Happening[] work =
            [Opened("link-bolt"), Closed("link-bolt"), new StanceTaken(stance), new JointTightened("link-bolt", how, null, null, null)];
        Assert.Equal(isDue, Due(work).Contains("check.ride-height"));
        Assert.Equal(isDue, Due(work[0], work[2], work[3], work[1]).Contains("check.ride-height"));
        Assert.Contains("check.ride-height", Due([.. work, Opened("link-bolt"), Closed("link-bolt")]));
    }

    /// <summary>The can stands there although the circuit is filled again.</summary>
    [Fact]
    public void Waste_stays_due_until_it_is_handed_in_and_what_came_since_is_due_again()
    {
        Happening[] drained = [new StepDone(Fact.State("brakes-drained"), null, null)];
        Happening[] filled = [.. drained, new StepReversed(Fact.State("brakes-drained"), null)];
        Assert.Equal([WasteKind.BrakeFluid, WasteKind.Rags], HandIn(drained));
        Assert.Equal([WasteKind.BrakeFluid, WasteKind.Rags], HandIn(filled));
        Assert.Empty(HandIn([.. filled, Done("hand-in")]));
        Assert.Empty(HandIn([.. drained, Done("hand-in")]));
        Assert.Empty(HandIn([.. drained, Done("hand-in"), Opened("union")]));
        Assert.Equal([WasteKind.BrakeFluid, WasteKind.Rags], HandIn([.. filled, Done("hand-in"), .. drained]));
        Assert.Equal([WasteKind.BrakeFluid, WasteKind.Rags], HandIn([.. filled, Done("hand-in"), Opened("union")]));
    }

    [Fact]
    public void Brakes_that_were_not_bled_stand_between_the_car_and_the_road()
    {
        Happening[] closed = [Opened("union"), Closed("union")];
        Assert.Equal(["joint union"], RoadReadiness.Of(Fold(closed).Car, [], []).Select(block => block.Thing));
        Assert.Empty(RoadReadiness.Of(Fold([.. closed, Done("check.bleed")]).Car, [], []));
        Assert.Equal(["hand-in", "check.bleed", .. OfRoad.Reverse()], Ready(closed));
        Assert.Equal(["hand-in"], Ready(Opened("union")));
    }

    /// <summary>The last job is done, and the car not: there is a timeline until nothing is due.</summary>
    [Fact]
    public void Without_a_job_there_is_a_timeline_as_long_as_something_is_apart_or_due()
    {
        Happening[] seen = [Opened("union"), Closed("union"), Done("hand-in"), Done("check.bleed"), Done("check.road-test")];
        Assert.True(TimelineWork.HasNothing(Fold().Car, []));
        Assert.False(TimelineWork.HasNothing(Fold(Opened("screws")).Car, []));
        Assert.False(TimelineWork.HasNothing(Fold(seen).Car, []));
        Assert.True(TimelineWork.HasNothing(Fold([.. seen, Done("check.again")]).Car, []));
        var work = TimelineWork.Of(Fold(seen).Car, [], new([]), new AccessPlanner(new ReducedSolver())).Value;
        Assert.Equal("check.again", Assert.Single(work.Network!.Tasks).Id);
        Assert.Contains(work.Network.Notes, note => note.Place == "timeline");
    }

    /// <summary>By a walk over the log that knows nothing of how it is folded: a check is over when each joint it checks was closed after
    /// its last opening, and the check marked after that.</summary>
    [Fact]
    public void Random_logs_leave_due_what_a_plain_reading_leaves()
    {
        foreach (var seed in Enumerable.Range(0, 400))
        {
            var random = new Random(seed);
            var work = Enumerable.Range(0, 12).Select(Happening (_) => random.Next(3) switch
            {
                0 => Opened(Of(random, "union", "link-bolt", "screws")),
                1 => Closed(Of(random, "union", "link-bolt", "screws")),
                _ => Done(Of(random, ["check.bleed", .. OfRubber, .. OfRoad])),
            }).ToArray();
            var due = new[] { ("check.bleed", new[] { "union" }) }.Concat(OfRubber.Select(id => (id, new[] { "link-bolt" })))
                .Concat(OfRoad.Select(id => (id, new[] { "union", "link-bolt" })))
                .Where(check => check.Item2.Any(joint => IsUnseen(work, joint, check.Item1))).Select(check => check.Item1);
            Assert.Equal(due.Order(StringComparer.Ordinal), Due(work));
        }
    }

    private static bool IsUnseen(Happening[] work, string joint, string check)
    {
        var opened = Array.FindLastIndex(work, one => one == Opened(joint));
        var closed = Array.FindIndex(work, Math.Max(0, opened), one => one == Closed(joint));
        return opened >= 0 && (closed < 0 || Array.FindIndex(work, closed, one => one == Done(check)) < 0);
    }

    private static string Of(Random random, params string[] names) => names[random.Next(names.Length)];

    private static StepDone Opened(string joint) => new(Fact.Open(joint), null, null);

    private static StepReversed Closed(string joint) => new(Fact.Open(joint), null);

    private static TaskMarked Done(string task) => new(new TaskMark(task, TaskProgress.Done, new(2027, 3, 1, 10, 0)));

    private static IEnumerable<string> Due(params Happening[] work) =>
        Network(work).Tasks.Where(task => task.Kind == TaskKind.Check && task.Mark is null).Select(task => task.Id)
            .Order(StringComparer.Ordinal);

    private static IEnumerable<string> Ready(params Happening[] work) =>
        RefitPlanner.Of(Fold(work)).Checks.Where(check => check.IsReady).Select(check => check.Id);

    private static IEnumerable<WasteKind> HandIn(params Happening[] work) =>
        Network(work).Tasks.Where(task => task.Kind == TaskKind.HandIn && task.Mark is null).SelectMany(task => task.Waste)
            .Select(waste => waste.Kind);

    private static TaskNetwork Network(params Happening[] work) => NetworkPlanner.Of(new() { Car = Fold(work).Car, Plan = Plan.Nothing });

    private static CarHistory Fold(params Happening[] work)
    {
        var writer = new LogWriter("bench", TimeProvider.System, System.Security.Cryptography.RandomNumberGenerator.Create());
        return CarHistory.Of("heron",
            writer.Next("heron", new(null, []), [new CarOpened("Heron", 1988, "EUR"), new StructureAdded("sheet", Rear, []), .. work]));
    }
}
