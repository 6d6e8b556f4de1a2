using CsCheck;
using Refettle.Coating.Sessions;

namespace Refettle.Tests.Coating;

public sealed class SessionPlannerTests
{
    /// <summary>Against an independent count: all plans tried.</summary>
    [Fact]
    public void No_plan_has_fewer_sessions_nor_the_same_and_an_earlier_end() => RandomSessions.Gen.Sample(question =>
    {
        var answer = SessionPlanner.Plan(question);
        Assert.Empty(SessionCheck.Of(question, answer));
        Assert.Equal(RandomSessions.BruteForce(question) ?? (0, -1),
            (answer.Sessions, answer.Rows.Max(row => row.Count == 0 ? -1 : row[row.Count - 1])));
        Assert.True(answer.IsProven);
        Assert.Equal(question.Rows.Select(row => RandomSessions.Choices(row).Any()), answer.Stuck.Select(stuck => stuck is null));
    }, iter: 1500);

    /// <summary>The same where only so much goes on at one time: which rows are planned, with how few sessions, until when.</summary>
    [Fact]
    public void With_little_room_no_plan_has_fewer_sessions_and_no_row_is_left_out_that_had_room() =>
        RandomSessions.Crowded.Sample(IsBest, iter: 3000);

    /// <summary>The same where parts stay until they are dry, and the room is not always there.</summary>
    [Fact]
    public void Where_parts_dry_in_room_that_comes_and_goes_no_plan_has_fewer_sessions() =>
        RandomSessions.Drying.Sample(IsBest, iter: 3000);

    private static void IsBest(SessionQuestion question)
    {
        var answer = SessionPlanner.Plan(question);
        Assert.Empty(SessionCheck.Of(question, answer));
        var fitting = RandomSessions.Fitting(question);
        Assert.Equal(fitting, Enumerable.Range(0, question.Rows.Count).Where(i => answer.Stuck[i] is null).ToValueList());
        Assert.Equal(RandomSessions.BruteForce(RandomSessions.Only(question, fitting)) ?? (0, -1),
            (answer.Sessions, answer.Rows.Max(row => row.Count == 0 ? -1 : row[row.Count - 1])));
        Assert.True(answer.IsProven);
        Assert.All(answer.NoRoom, i => Assert.True(RandomSessions.Choices(question.Rows[i]).Any() && answer.Stuck[i] == 0));
    }

    /// <summary>A garage's whole load: 24 parts of one or two pieces in two coats, 5 pieces at a time, 40 evenings. 36 pieces take 8
    /// sessions of each product at least.</summary>
    [Fact]
    public void A_whole_car_in_a_small_corner_is_planned_with_as_few_sessions_as_its_pieces_take()
    {
        ValueList<int> evenings = [.. Enumerable.Range(0, 40)];
        ValueList<ValueList<int>> after =
            [.. evenings.Select(before => evenings.Where(one => one - before is >= 1 and <= 7).ToValueList())];
        var question = new SessionQuestion(40,
            [.. Enumerable.Range(0, 24)
                .Select(i => new CoatRow([new("epoxy", evenings, []), new("top", evenings, after)]) { Load = new(1 + i % 2, 0.3m) })])
        { Room = new(5, null) };
        var answer = SessionPlanner.Plan(question);
        Assert.Empty(SessionCheck.Of(question, answer));
        Assert.Equal((16, 16, 0), (answer.Sessions, answer.AtLeast, answer.NoRoom.Count));
    }

    /// <summary>Two pieces at a time, and what was put on stays for two evenings: nine rows of two coats, one after the other, find room in
    /// 60 evenings (9 rows in pairs, five pairs of about six evenings).</summary>
    [Fact]
    public void What_dries_for_long_finds_room_one_after_the_other()
    {
        ValueList<int> evenings = [.. Enumerable.Range(0, 60)];
        ValueList<int> until = [.. evenings.Select(one => Math.Min(59, one + 2))];
        ValueList<ValueList<int>> after =
            [.. evenings.Select(before => evenings.Where(one => one - before is >= 1 and <= 7).ToValueList())];
        var row = new CoatRow([new CoatToCome("epoxy", evenings, []) { TakesUntil = until },
            new CoatToCome("top", evenings, after) { TakesUntil = until }])
        { Load = new(1, 0) };
        var question = new SessionQuestion(60, [.. Enumerable.Range(0, 9).Select(i => row with { Load = new(1, i / 10m) })])
        { Room = new(2, null) };
        var answer = SessionPlanner.Plan(question);
        Assert.Empty(SessionCheck.Of(question, answer));
        Assert.Empty(answer.NoRoom);
        Assert.Equal(10, answer.Sessions);
    }

    /// <summary>One coat each and windows without gaps: the fewest points that stab all intervals are
    /// as many as there are intervals apart from each other (Gallai; A. Gyárfás and J. Lehel, Covering and coloring problems for relatives
    /// of intervals, 1985; greedy by earliest end; from memory).</summary>
    [Fact]
    public void Windows_of_one_coat_are_stabbed_by_as_few_sessions_as_there_are_windows_apart() =>
        Gen.Select(Gen.Int[0, 39], Gen.Int[0, 12]).Array[1, 25].Sample(windows =>
    {
        var question = new SessionQuestion(52,
            windows.Select(window => new CoatRow([new("a", Enumerable.Range(window.Item1, window.Item2 + 1).ToValueList(), [])]))
                .ToValueList());
        var (apart, end) = (0, -1);
        foreach (var (start, length) in windows.OrderBy(window => window.Item1 + window.Item2))
            (apart, end) = start > end ? (apart + 1, start + length) : (apart, end);
        var answer = SessionPlanner.Plan(question);
        Assert.Equal(apart, answer.Sessions);
        Assert.True(answer.IsProven);
    }, iter: 200);

    /// <summary>More to coat never takes fewer sessions, as long as what was kept before is still planned.</summary>
    [Fact]
    public void Another_part_never_lessens_the_sessions() => Gen.Select(RandomSessions.Gen, Gen.Int[0, 1000]).Sample((question, _) =>
    {
        var fewer = question with { Rows = question.Rows.Skip(1).ToValueList() };
        Assert.True(SessionPlanner.Plan(fewer).Sessions <= SessionPlanner.Plan(question).Sessions);
    }, iter: 500);

    [Fact]
    public void A_part_like_another_takes_no_session_more() => RandomSessions.Gen.Sample(question =>
        Assert.Equal(SessionPlanner.Plan(question).Sessions,
            SessionPlanner.Plan(question with { Rows = [.. question.Rows, question.Rows[0]] }).Sessions), iter: 300);

    [Fact]
    public void Another_day_to_coat_on_never_takes_more_sessions_for_parts_that_could_be_coated_before() =>
        RandomSessions.Gen.Sample(question =>
    {
        var kept = question with { Rows = question.Rows.Where(row => RandomSessions.Choices(row).Any()).ToValueList() };
        var freer = kept with
        {
            Rows = kept.Rows
                .Select(row => new CoatRow(
                    [.. row.Coats.Select(coat => coat with { May = Enumerable.Range(0, kept.Occasions).ToValueList() })])).ToValueList()
        };
        Assert.True(SessionPlanner.Plan(freer).Sessions <= SessionPlanner.Plan(kept).Sessions);
    }, iter: 300);

    [Fact]
    public void Cut_off_it_still_answers_soundly_and_does_not_claim_a_proof_it_lacks() => RandomSessions.Gen.Sample(question =>
    {
        var (cut, full) = (SessionPlanner.Plan(question, most: 3), SessionPlanner.Plan(question));
        Assert.Empty(SessionCheck.Of(question, cut));
        Assert.True(cut.AtLeast <= full.Sessions && cut.Sessions >= full.Sessions);
    }, iter: 500);

    /// <summary>An axle primed on day 0, springs ready from day 3: one top coat serves both, on the
    /// day that lies in both windows.</summary>
    [Fact]
    public void Windows_that_overlap_are_served_together()
    {
        ValueList<ValueList<int>> after =
            [.. Enumerable.Range(0, 10).Select(day => Enumerable.Range(0, 10).Where(later => later - day is >= 1 and <= 7).ToValueList())];
        CoatRow Row(params int[] primer) =>
            new([new("primer", primer.ToValueList(), []), new("top", Enumerable.Range(0, 10).ToValueList(), after)]);
        var answer = SessionPlanner.Plan(new(10, [Row(0), Row(3, 4)]));
        Assert.Equal(3, answer.Sessions);
        Assert.Equal([[0, 4], [3, 4]], answer.Rows.Select(row => row.ToArray()));
    }

    [Fact]
    public void The_check_sees_a_coat_outside_its_window_and_a_wrong_count()
    {
        ValueList<ValueList<int>> after = [[1], [2], []];
        var question = new SessionQuestion(3, [new([new("primer", [0, 1], []), new("top", [1, 2], after)])]);
        Assert.Empty(SessionCheck.Of(question, new([[0, 1]], [null], 2, 2)));
        Assert.NotEmpty(SessionCheck.Of(question, new([[0, 2]], [null], 2, 2)));
        Assert.NotEmpty(SessionCheck.Of(question, new([[0, 1]], [null], 1, 1)));
        Assert.NotEmpty(SessionCheck.Of(question, new([[]], [null], 0, 0)));
        var small = new SessionQuestion(2,
            [new([new("top", [0, 1], [])]) { Load = new(1, 2) }, new([new("top", [0, 1], [])]) { Load = new(1, 2) }]);
        Assert.Empty(SessionCheck.Of(small with { Room = new(2, 4) }, new([[0], [0]], [null, null], 1, 1)));
        Assert.NotEmpty(SessionCheck.Of(small with { Room = new(1, null) }, new([[0], [0]], [null, null], 1, 1)));
        Assert.NotEmpty(SessionCheck.Of(small with { Room = new(null, 3.9m) }, new([[0], [0]], [null, null], 1, 1)));
        var apart = new SessionAnswer([[0], [1]], [null, null], 2, 1);
        var drying = small with
        {
            Room = new(1, null),
            Rows = small.Rows.Select(row => row with { Coats = [row.Coats[0] with { TakesUntil = [1, 1] }] }).ToValueList()
        };
        Assert.Empty(SessionCheck.Of(small with { Room = new(1, null) }, apart));
        Assert.NotEmpty(SessionCheck.Of(drying, apart));
        Assert.NotEmpty(SessionCheck.Of(small with { Rooms = [new(1, null), new(0, null)] }, apart));
    }
}
