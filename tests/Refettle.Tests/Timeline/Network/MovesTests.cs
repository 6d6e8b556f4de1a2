using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

/// <summary>The car is where its work is. What carries a car, and that two people and dollies move one that
/// does not roll: common practice, no source. Nobody under what is not blocked: 29 CFR 1910.244(a)(2).</summary>
public sealed class MovesTests
{
    private static readonly Facility Yard = new() { Id = "yard", Name = "The yard", Kind = FacilityKind.Place };

    private static readonly Facility Corner = new() { Id = "corner", Name = "The spray corner", Kind = FacilityKind.Place };

    private static readonly Facility Skates = new() { Id = "skates", Name = "Skates", Kind = FacilityKind.Dollies };

    /// <summary>Over random networks, in any order that keeps the links, replayed here by the steps alone.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void No_task_that_needs_another_place_runs_without_a_move_between(bool isBegun)
    {
        var (moves, carried) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            if (RandomNetworks.Make(seed, isBegun ? Apart.ByPlan : Apart.NotYet) is not { } one)
                continue;
            var question = one.Question with { Car = Visiting(one.Question.Car, one.Network, new(seed)) };
            var order = NetworkTests.Shuffled(NetworkPlanner.Of(question), new(seed));
            Assert.Empty(NetworkCheck.Of(question.Car, question.Plan.Question, order));
            var (at, off) = ((string?)null, question.Car.Done.ToHashSet());
            foreach (var task in order)
            {
                if (task.Kind == TaskKind.Move)
                {
                    Assert.NotEqual(at, task.At);
                    (at, moves) = (task.At, moves + 1);
                    var isOff = question.Car.Structure.Parts.Any(part => part.Roles.Contains("hub") && IsOff(question.Car, off, part.Id));
                    carried += isOff ? 1 : 0;
                    Assert.True(!isOff || (task.Uses.Contains(Needed.Helper) && task.Uses.Contains(Needed.Dollies)),
                        $"seed {seed}: {task.Id}");
                }

                if (question.Car.Calendar.Tasks.FirstOrDefault(own => own.Id == task.Id) is { } visit)
                    Assert.Equal(visit.Uses[0], at);
                else if (question.Car.Calendar.Terms.Any(terms => terms.Task == task.Id))
                    Assert.Equal("yard", at);
                else if (task.Kind is TaskKind.Strip or TaskKind.Try or TaskKind.Refit or TaskKind.Stance or TaskKind.Check
                    && task.Place != "bench")
                    Assert.True(at is null, $"seed {seed}: {task.Id} at {at}");
                if (task.Kind is TaskKind.Strip or TaskKind.Try)
                    off.UnionWith(task.Steps.Select(step => step.Fact));
                else if (task.Kind == TaskKind.Refit)
                    off.ExceptWith(task.Steps.Select(step => step.Fact));
            }
        }

        Assert.True(moves > 100 && carried > 15, $"{moves} moves, {carried} carried");
    }

    [Fact]
    public void With_the_axle_off_the_car_is_carried_by_two_on_dollies()
    {
        var network = Sprayed(after: "strip.axle", before: "refit.axle", Yard, Skates);
        foreach (var move in new[] { Task(network, "move.spray"), Task(network, "move-back.spray") })
        {
            Assert.Contains("does not roll (Axle off", move.Says, StringComparison.Ordinal);
            Assert.Equal(move.At is null ? [Needed.Helper, Needed.Dollies] : [Needed.Helper, Needed.Dollies, Needed.Facility("yard")],
                move.Uses);
            Assert.Equal(Origin.CommonPractice, move.Origin);
            Assert.Contains(move.Cautions, caution => caution.StartsWith("Nobody under the car", StringComparison.Ordinal));
            Assert.Contains(move.Cautions, caution => caution.Contains("A jack lifts, it carries no car", StringComparison.Ordinal));
        }

        Assert.Empty(network.Notes);
        Assert.Contains(NetworkCheck.Of(With(Car(), [], "refit.axle", Yard), new() { Goals = [] },
            network.Tasks.Where(task => task.Kind != TaskKind.Move).ToList()),
            fault => fault.Found == "the car is to be at yard and is at its usual place");
        Assert.True(Reaches(network, "strip.axle", "move.spray") && Reaches(network, "move.spray", "spray")
            && Reaches(network, "spray", "move-back.spray") && Reaches(network, "move-back.spray", "refit.axle"));
    }

    /// <summary>A job is planned by the program, and done where its owner says.</summary>
    [Fact]
    public void A_derived_task_is_done_at_the_place_its_owner_names()
    {
        var car = Car() with
        { Calendar = new() { Facilities = [Yard, Skates], Terms = [TaskTerms.None("job.weld") with { Uses = ["yard"] }] } };
        var job = new Job { Id = "weld", Name = "Weld the floor", Work = new(90), Goals = [Fact.Off("axle")] };
        var network = NetworkPlanner.Of(new()
        { Car = car, Plan = new AccessPlanner(new ReducedSolver()).Reach(car, Question.For(Fact.Off("axle"))), Jobs = [job] });
        Assert.True(Reaches(network, "strip.axle", "move.job.weld") && Reaches(network, "move.job.weld", "job.weld")
            && Reaches(network, "job.weld", "move-back.job.weld") && Reaches(network, "move-back.job.weld", "refit.axle"));
        Assert.Contains(Needed.Facility("yard"), Task(network, "job.weld").Uses);
        Assert.DoesNotContain(NetworkPlanner.Of(new()
        { Car = car with { Calendar = car.Calendar with { Facilities = [] } }, Plan = Plan.Nothing, Jobs = [job] }).Tasks,
            task => task.Kind == TaskKind.Move);
    }

    [Fact]
    public void Before_the_axle_comes_off_it_is_let_down_and_rolled()
    {
        var move = Task(Sprayed(after: null, before: "strip.axle", Yard), "move.spray");
        Assert.Contains("roll", move.Says, StringComparison.Ordinal);
        Assert.Equal([Needed.Facility("yard")], move.Uses);
        Assert.True(move.Takes < new Minutes(60));
    }

    /// <summary>A joint that carries is enough, and so is a part found too weak; a hose between the same parts is none.</summary>
    [Fact]
    public void An_open_joint_that_carries_keeps_it_from_rolling()
    {
        Assert.Empty(Rolling.Against(new(Car())));
        Assert.Equal(["Axle bolts open"], Rolling.Against(new(Car() with { Done = [Fact.Open("axle-bolts")] })));
        Assert.Empty(Rolling.Against(new(Car() with { Done = [Fact.Open("axle-hose")] })));
        Assert.Equal(["Axle too weak"], Rolling.Against(new(Car() with { Unsound = ["axle"] })));
        Assert.Equal(["Link off"], Rolling.Against(new(Car() with { Done = [Fact.Off("link")] })));
    }

    [Fact]
    public void Without_dollies_the_timeline_says_what_is_missing_and_tonight_does_not_offer_it()
    {
        var network = Sprayed(after: "strip.axle", before: "refit.axle", Yard);
        var note = Assert.Single(network.Notes, note => note.Place == "task move.spray");
        Assert.Contains("nothing that carries it", note.Found, StringComparison.Ordinal);
        var asked = new Refettle.Timeline.Tonight.TonightQuestion
        {
            Car = Car(),
            Network = new([Task(network, "move.spray")], [], []),
            Now = NodaTime.Instant.FromUtc(2027, 3, 2, 18, 0),
            Minutes = new(70),
            HasHelper = true
        };
        Assert.Contains("nothing that carries it", Assert.Single(Refettle.Timeline.Tonight.TonightPlanner.Of(asked).NotNow).Why,
            StringComparison.Ordinal);
        Assert.Single(Refettle.Timeline.Tonight.TonightPlanner.Of(asked with
        { Car = Car() with { Calendar = new() { Facilities = [Skates] } } }).Offers);
    }

    /// <summary>The last day of the place is the last on which the car stands there, also where nothing else waits for it.</summary>
    [Fact]
    public void A_place_with_a_last_day_is_left_by_then()
    {
        var brief = Yard with { Until = new(2027, 3, 7) };
        Assert.Equal(new NodaTime.LocalDateTime(2027, 3, 8, 0, 0),
            Task(Sprayed(after: null, before: "strip.axle", brief), "move-back.spray").Latest);
        Assert.Null(Task(Sprayed(after: null, before: "strip.axle", brief), "move.spray").Latest);
        Assert.Equal(["move.spray", "move-back.spray"], Moved(With(Car() with { Stance = Refettle.Car.OnWheels }, [], "none", brief)));
        Assert.Equal(["move.spray"], Moved(With(Car() with { Stance = Refettle.Car.OnWheels }, [], "none", Yard)));
        Assert.Equal(["move-back.spray"], Moved(Marked(Marked(With(Car(), [], "none", brief), "move.spray"), "spray")));
    }

    /// <summary>The yard is there from the third week on. Until then comes off what leaves the car rolling, and the
    /// timeline says why the rest waits.</summary>
    [Fact]
    public void Before_the_place_is_there_the_car_is_taken_apart_as_far_as_it_still_rolls()
    {
        var now = NodaTime.Instant.FromUtc(2027, 3, 1, 8, 0);
        var later = Planned(Yard with { From = new(2027, 3, 20) });
        Assert.True(Reaches(later.Network!, "move.spray", "strip.trim"));
        var filled = later.Filled(now);
        Assert.True(Reaches(filled.Network!, "strip.trim", "move.spray") && Reaches(filled.Network!, "move.spray", "strip.axle"));
        var notes = new Refettle.Timeline.TimelinePlanner(new Refettle.Timeline.Scheduling.FirstScheduler())
            .Of(filled.Ask(now), new(TimeSpan.FromSeconds(1))).Value.Notes;
        Assert.Contains("pass without work on the car", Assert.Single(notes, note => note.Place == "task move.spray").Found,
            StringComparison.Ordinal);
        Assert.DoesNotContain(notes, note => note.Severity == Severity.Error);
        var carried = Planned(Yard with { From = new(2027, 3, 20) }, "link").Filled(now);
        Assert.True(Reaches(carried.Network!, "strip.axle", "move.spray"));
        var always = Planned(Yard);
        Assert.Same(always.Network, always.Filled(now).Network);
        Assert.DoesNotContain(new Refettle.Timeline.TimelinePlanner(new Refettle.Timeline.Scheduling.FirstScheduler())
            .Of(always.Ask(now), new(TimeSpan.FromSeconds(1))).Value.Notes, note => note.Place == "task move.spray");

        static Refettle.Timeline.TimelineWork Planned(Facility yard, params string[] off)
        {
            var car = With(Car(), [], "refit.axle", yard);
            var clips = new Joint
            {
                Id = "clips",
                Name = "Clips",
                Kind = JointKind.Clip,
                Holds = ["trim", "shell"],
                Ways = [new() { Id = "pull", Tool = "hook", Open = new(60), Close = new(30) }]
            };
            return Refettle.Timeline.TimelineWork.Of(
                car with
                {
                    Done = off.Select(Fact.Off).ToValueList(),
                    Structure = car.Structure with
                    {
                        Parts = car.Structure.Parts.Select(part => part.Id == "trim" ? part with { Zone = "cabin" } : part).ToValueList(),
                        Joints = [.. car.Structure.Joints, clips]
                    },
                    Calendar = car.Calendar with
                    {
                        Spells = [new()
                            { Id = "evenings", First = new(2027, 3, 2), From = new(18, 30), Until = new(21, 30),
                                Repeats = new(Rhythm.Weekly, 1, []) }]
                    },
                },
                [Fact.Off("axle"), Fact.Off("trim")], new([]), new AccessPlanner(new ReducedSolver())).Value;
        }
    }

    [Fact]
    public void A_move_that_was_made_is_not_made_again()
    {
        var car = With(Car() with { Done = [Fact.Open("axle-bolts"), Fact.Open("axle-hose"), Fact.Off("axle")] }, [], "refit.axle", Yard,
            Skates);
        Assert.Equal(["move.spray", "move-back.spray"], Moved(car));
        var there = Marked(car, "move.spray");
        Assert.Equal(["move-back.spray"], Moved(there));
        Assert.Equal(["move-back.spray"], Moved(Marked(there, "spray")));
        Assert.Empty(Moved(Marked(Marked(there, "spray"), "move-back.spray")));
    }

    private static List<string> Moved(Car car) =>
        NetworkPlanner.Of(new() { Car = car, Plan = Plan.Nothing }).Tasks.Where(task => task.Kind == TaskKind.Move).Select(task => task.Id)
            .ToList();

    private static Car Marked(Car car, string task) =>
        car with
        {
            Calendar = car.Calendar with
            { Marks = [.. car.Calendar.Marks, new(task, TaskProgress.Done, new(2027, 3, 1 + car.Calendar.Marks.Count, 12, 0))] }
        };

    /// <summary>Own tasks at two places, each somewhere between two tasks; some parts carry the car.</summary>
    private static Car Visiting(Car car, TaskNetwork network, Random random)
    {
        OwnTask Visit(string id, Facility place) => new()
        {
            Id = id,
            Name = id,
            Takes = new(30),
            Uses = [place.Id],
            After = random.Next(5) == 0 ? [] : [network.Tasks[random.Next(network.Tasks.Count)].Id],
            Before = random.Next(2) == 0 ? [] : [network.Tasks[random.Next(network.Tasks.Count)].Id],
        };
        return car with
        {
            Calendar = car.Calendar with
            {
                Facilities = [Yard, Corner, Skates],
                Terms = [TaskTerms.None(network.Tasks[random.Next(network.Tasks.Count)].Id) with { Uses = ["yard"] }],
                Tasks = [Visit("wash", Yard), Visit("spray", Corner), Visit("dry", Corner)]
            },
            Structure = car.Structure with
            {
                Parts = car.Structure.Parts.Select((part, i) => i % 3 == 0 && !part.Fixed ? part with { Roles = ["hub"] } : part)
                    .ToValueList()
            },
        };
    }

    private static bool IsOff(Car car, HashSet<Fact> done, string part) => done.Contains(Fact.Off(part)) || done.Contains(Fact.Free(part))
        || car.Structure.SubAssemblies.Any(unit => unit.Members.Contains(part) && done.Contains(Fact.Off(unit.Id)));

    private static TaskNetwork Sprayed(string? after, string before, params Facility[] there)
    {
        var car = With(Car(), after is null ? [] : [after], before, there);
        return NetworkPlanner.Of(new()
        { Car = car, Plan = new AccessPlanner(new ReducedSolver()).Reach(car, Question.For(Fact.Off("axle"))) });
    }

    private static Car With(Car car, ValueList<string> after, string before, params Facility[] there) => car with
    {
        Calendar = new()
        {
            Facilities = [.. there],
            Tasks = [new()
                    { Id = "spray", Name = "Spray the floor", Takes = new(90), Uses = ["yard"], After = after, Before = [before] }]
        },
    };

    private static WorkTask Task(TaskNetwork network, string id) => network.Tasks.Single(task => task.Id == id);

    private static bool Reaches(TaskNetwork network, string from, string to) =>
        from == to || network.Links.Where(link => link.Before == from).Any(link => Reaches(network, link.After, to));

    private static Car Car() => new()
    {
        Id = "car",
        Name = "Car",
        Stance = "on-stands",
        Structure = new()
        {
            States =
            [
                new() { Id = Refettle.Car.OnWheels, Name = "On its wheels", IsStance = true,
                    Ways = [new() { Id = "jack", Tool = "jack", Open = new(10) }] },
                new() { Id = "on-stands", Name = "On stands", IsStance = true,
                    Ways = [new() { Id = "jack", Tool = "jack", Open = new(20) }] },
            ],
            Parts = [new() { Id = "shell", Name = "Shell", Fixed = true }, new() { Id = "axle", Name = "Axle", Roles = ["axle"] },
                new() { Id = "link", Name = "Link", Roles = [Rolling.RollsOn] }, new() { Id = "trim", Name = "Trim" }],
            Joints =
            [
                new() { Id = "axle-bolts", Name = "Axle bolts", Holds = ["axle", "shell"],
                    Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(9), Close = new(9), Clear = [Fact.State("on-stands")] }] },
                new() { Id = "axle-hose", Name = "Axle hose", Kind = JointKind.Hose, Holds = ["axle", "shell"],
                    Ways = [new() { Id = "spanner", Tool = "spanner", Open = new(9), Close = new(9), Clear = [Fact.State("on-stands")] }] },
            ],
        },
    };
}
