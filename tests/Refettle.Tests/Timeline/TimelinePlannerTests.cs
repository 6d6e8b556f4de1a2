using NodaTime;
using Refettle.Tests.Timeline.Network;
using Refettle.Timeline;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Spells;

namespace Refettle.Tests.Timeline;

public sealed class TimelinePlannerTests
{
    // A Monday; the clock changes on 28 March.
    private static readonly Instant Now = Instant.FromUtc(2027, 3, 1, 8, 0);

    private static readonly CarCalendar Evenings = new()
    {
        TimeZone = "Europe/Berlin",
        Handover = new(new(2027, 6, 1, 10, 0), "meeting"),
        Spells =
        [
            new() { Id = "evenings", First = new(2027, 3, 2), From = new(18, 30), Until = new(21, 30),
                Repeats = new(Rhythm.Weekly, 1, [IsoDayOfWeek.Tuesday, IsoDayOfWeek.Thursday]) },
            new() { Id = "saturdays", First = new(2027, 3, 6), From = new(9, 0), Until = new(17, 0), Repeats = new(Rhythm.Weekly, 1, []) },
        ],
    };

    private static readonly TimelinePlanner Planner = new(new FirstScheduler());

    [Fact]
    public void Work_lies_in_spells_waits_run_on_and_the_whole_order_works_on_the_car()
    {
        var (made, waits) = (0, 0);
        for (var seed = 0; seed < 120; seed++)
        {
            if (RandomNetworks.Make(seed, seed % 2 == 0 ? Apart.ByPlan : Apart.NotYet) is not { } one)
                continue;
            made++;
            var answer = Answer(one.Question with { Car = one.Question.Car with { Calendar = Evenings } });
            Assert.True(answer.Tasks.Count > 0, $"seed {seed}: {answer.Status}");
            Assert.DoesNotContain(answer.Notes, note => note.Severity == Severity.Error);
            waits += answer.Tasks.Count(task => task.Task.IsWait);
            Assert.All(answer.Tasks.Where(task => !task.Task.IsWait), AssertInSpells);
            Assert.All(answer.Tasks, task => Assert.Equal((int)Math.Ceiling(task.Task.Takes.Value), task.Pieces.Sum(Minutes)));
        }

        Assert.True(made > 15 && waits > 40, $"{made} timelines, {waits} waits");
    }

    /// <summary>The 60 minutes before midnight on 27 March and 60 from 3:30 on: between them the clock skips an hour.</summary>
    [Fact]
    public void A_wait_over_the_change_of_the_clock_takes_its_minutes()
    {
        var network = new TaskNetwork([Task("wait", 300, isWait: true)], [], []);
        var answer = Planner.Of(Asked(new() { Id = "car", Name = "Car", Calendar = Evenings }, network) with
        { Now = Instant.FromUtc(2027, 3, 27, 23, 0) }, Limits).Value;
        Assert.Equal(new LocalDateTime(2027, 3, 28, 0, 0), answer.Tasks[0].Start);
        Assert.Equal(new LocalDateTime(2027, 3, 28, 6, 0), answer.Tasks[0].Finish);
    }

    [Fact]
    public void Beyond_the_last_entered_spell_the_rhythm_goes_on_and_says_so()
    {
        var short_ = Evenings with
        { Spells = [Evenings.Spells[0] with { Repeats = Evenings.Spells[0].Repeats! with { Until = new(2027, 3, 11) } }] };
        var few = Planner.Of(Asked(Bare(short_), new([Task("a", 60)], [], [])), Limits).Value;
        Assert.False(few.CountsOnMore);
        var many = Planner.Of(Asked(Bare(short_), new([Task("a", 60 * 15)], [], [])), Limits).Value;
        Assert.True(many.CountsOnMore);
        Assert.Equal(new LocalDateTime(2027, 3, 16, 21, 30), many.Finish);
    }

    [Fact]
    public void Without_spells_it_asks_for_them() =>
        Assert.Equal("nobody has said when there is time",
            Assert.Single(Planner.Of(Asked(Bare(CarCalendar.Empty), new([Task("a", 60)], [], [])), Limits).Faults).Found);

    [Fact]
    public void The_critical_chain_goes_back_through_waits_and_hands()
    {
        var network = new TaskNetwork(
            [Task("order", 10), Task("way", 60 * 24 * 5, isWait: true), Task("fit", 30), Task("polish", 60)],
            [new("order", "way"), new("way", "fit")], []);
        var answer = Planner.Of(Asked(Bare(Evenings), network), Limits).Value;
        Assert.Equal(["order", "way", "fit"], answer.Tasks.Where(task => task.IsCritical).Select(task => task.Task.Id));
    }

    [Fact]
    public void Days_that_are_ruled_out_and_settled_starts_are_kept()
    {
        var network = new TaskNetwork(
            [Task("a", 60) with { Not = [new(new(2027, 3, 1), new(2027, 3, 4))] },
                Task("b", 60) with { FixedStart = new(2027, 3, 9, 19, 0) }], [], []);
        var answer = Planner.Of(Asked(Bare(Evenings), network), Limits).Value;
        Assert.Equal(new LocalDateTime(2027, 3, 6, 9, 0), Start(answer, "a"));
        Assert.Equal(new LocalDateTime(2027, 3, 9, 19, 0), Start(answer, "b"));
    }

    /// <summary>ISO 12944-7: 3 K above the dew point. At 12 °C and 85 % it is 9.6 °C, too near; at 70 % 6.7
    /// °C, far enough (Magnus formula).</summary>
    [Fact]
    public void Coats_wait_for_a_day_with_air_to_dry_in()
    {
        var damp = Evenings with { Climate = [new(3, 12, 84, Origin.User)], Readings = [new(new(2027, 3, 9), 12, 70)] };
        var coat = Task("coat", 60) with { Kind = TaskKind.Coat, Air = new(10, 85) };
        var answer = Planner.Of(Asked(Bare(damp), new([coat], [], [])), Limits).Value;
        Assert.Equal(new LocalDateTime(2027, 3, 9, 18, 30), Start(answer, "coat"));
    }

    /// <summary>Windows from data sheets: bare steel is primed within 8 h, epoxy recoated from 16 h to 7
    /// days at 20 °C (docs/timeline.md).</summary>
    [Fact]
    public void A_refurbished_part_is_coated_inside_its_windows()
    {
        var coated = 0;
        for (var seed = 0; seed < 250; seed++)
        {
            if (RandomNetworks.Make(seed, Apart.NotYet) is not { } one)
                continue;
            var answer = Answer(one.Question with { Car = one.Question.Car with { Calendar = Evenings } });
            var tasks = answer.Tasks.ToDictionary(task => task.Task.Id);
            foreach (var primer in answer.Tasks
                .Where(task => task.Task.Id.StartsWith("coat.", StringComparison.Ordinal)
                    && task.Task.Id.EndsWith(".1", StringComparison.Ordinal)))
            {
                coated++;
                var part = primer.Task.Id["coat.".Length..^2];
                Assert.True(Hours(tasks[$"derust.{part}"].Finish, primer.Start) is >= 0 and <= 8);
                Assert.True(Hours(primer.Finish, tasks[$"coat.{part}.2"].Start) is >= 16 and <= 168);
                Assert.True(Hours(tasks[$"coat.{part}.2"].Finish, tasks[$"rebuild.{part}"].Start) >= 48);
            }
        }

        Assert.True(coated > 3, $"{coated} parts coated");
    }

    /// <summary>The helper is there on one day only, before the wait is over.</summary>
    [Fact]
    public void Without_a_timeline_it_says_what_is_short()
    {
        var once = Evenings with
        {
            Facilities = [new() { Id = "neighbour", Name = "Neighbour", Kind = FacilityKind.Helper, Until = new(2027, 3, 6) }],
        };
        var network = new TaskNetwork([Task("wait", 60 * 24 * 9, isWait: true), Task("lift", 30) with { Uses = [Needed.Helper] }],
            [new("wait", "lift")], []);
        var answer = Planner.Of(Asked(Bare(once), network), Limits).Value;
        Assert.Empty(answer.Tasks);
        Assert.Equal("too few days for helper, which is needed for \"lift\"", Assert.Single(answer.Clashes));
    }

    /// <summary>Whoever drags a task is told why it cannot begin then; what is short is not looked for beside that.</summary>
    [Fact]
    public void What_is_short_is_not_looked_for_when_a_task_was_moved()
    {
        var once = Evenings with
        { Facilities = [new() { Id = "neighbour", Name = "Neighbour", Kind = FacilityKind.Helper, Until = new(2027, 3, 6) }] };
        var network = new TaskNetwork([Task("wait", 60 * 24 * 9, isWait: true), Task("lift", 30) with { Uses = [Needed.Helper] }],
            [new("wait", "lift")], []);
        var moved = Planner.Moved(Asked(Bare(once), network), Limits).Value;
        Assert.Empty(moved.Tasks);
        Assert.Empty(moved.Clashes);
    }

    /// <summary>A search that was ended has found nothing, though the helper is there in time: then nothing is short.</summary>
    [Fact]
    public void Nothing_is_called_short_where_a_timeline_was_only_not_found()
    {
        var weekly = Evenings with
        { Facilities = [new() { Id = "neighbour", Name = "Neighbour", Kind = FacilityKind.Helper, Until = new(2027, 5, 6) }] };
        var network = new TaskNetwork([Task("lift", 30) with { Uses = [Needed.Helper] }], [], []);
        Assert.Empty(new TimelinePlanner(new FindsNothing()).Of(Asked(Bare(weekly), network), Limits).Value.Clashes);
    }

    private sealed class FindsNothing : IScheduler
    {
        public ScheduleAnswer Solve(
            ScheduleQuestion question, ScheduleLimits limits, IProgress<ScheduleAnswer>? progress = null,
            CancellationToken cancel = default) => new(ScheduleStatus.Unknown, null, 0, [], []);
    }

    [Fact]
    public void A_kept_timeline_is_what_the_next_is_shown_against()
    {
        var kept = Evenings with
        {
            Kept = [new("a", new(2027, 3, 2, 18, 30), new(2027, 3, 2, 19, 30)),
                new("gone", new(2027, 3, 4, 18, 30), new(2027, 3, 4, 19, 30))]
        };
        var answer = Planner.Of(Asked(Bare(kept),
            new([Task("a", 60) with { Not = [new(new(2027, 3, 2), new(2027, 3, 2))] }, Task("b", 30)], [], [])), Limits).Value;
        Assert.Equal(["a", "b", "gone"], answer.Changes.Select(change => change.Task).Order());
        Assert.Null(answer.Changes.Single(change => change.Task == "gone").Now);
    }

    private static readonly ScheduleLimits Limits = new(TimeSpan.FromSeconds(5));

    private static TimelineAnswer Answer(NetworkQuestion question) =>
        Planner.Of(new() { Car = question.Car, Network = NetworkPlanner.Of(question), Plan = question.Plan, Now = Now }, Limits).Value;

    private static TimelineQuestion Asked(Car car, TaskNetwork network) =>
        new()
        {
            Car = car,
            Network = network,
            Plan = new() { Question = new() { Goals = [] }, Status = Refettle.Access.PlanStatus.Optimal },
            Now = Now
        };

    private static Car Bare(CarCalendar calendar) => new() { Id = "car", Name = "Car", Calendar = calendar };

    private static WorkTask Task(string id, int minutes, bool isWait = false) =>
        new()
        {
            Id = id,
            Kind = isWait ? TaskKind.Wait : TaskKind.Own,
            Says = id,
            Takes = new(minutes),
            Pace = isWait ? Pace.WallClock : Pace.Pausing
        };

    private static LocalDateTime Start(TimelineAnswer answer, string task) => answer.Tasks.Single(one => one.Task.Id == task).Start;

    private static double Hours(LocalDateTime from, LocalDateTime until) => Minutes(new(from, until)) / 60.0;

    private static int Minutes(PlannedWindow window)
    {
        var zone = DateTimeZoneProviders.Tzdb["Europe/Berlin"];
        return (int)(zone.AtLeniently(window.End).ToInstant() - zone.AtLeniently(window.Start).ToInstant()).TotalMinutes;
    }

    private static void AssertInSpells(PlannedTask task) => Assert.All(task.Pieces, piece => Assert.True(
        piece.Start == piece.End || Evenings.Spells.Any(spell => SpellDays.Of(spell, piece.Start.Date).LastOrDefault() == piece.Start.Date
            && piece.Start.TimeOfDay >= spell.From && piece.End.TimeOfDay <= spell.Until && piece.End.Date == piece.Start.Date),
            $"{task.Task.Id}: {piece}"));
}
