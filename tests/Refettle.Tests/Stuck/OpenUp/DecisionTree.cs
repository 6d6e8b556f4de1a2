using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Tests.Stuck.OpenUp;

/// <summary>The whole decision tree by plain enumeration: every grade, level of place and level of
/// joint, every outcome of every joint, every choice now and later. Shares with the planner only the order of tries at a single joint, from
/// the try planner that has its own tests.</summary>
internal sealed class DecisionTree
{
    private readonly OpenUpQuestion _question;
    private readonly List<(double Weight, int[] Levels)> _states = [];
    private readonly Dictionary<(int Joint, int First, int Then), double[]> _finishes = [];

    public DecisionTree(OpenUpQuestion question)
    {
        _question = question;
        var joints = question.Joints.Count;
        foreach (var code in Enumerable.Range(0, (int)Math.Pow(5, 1 + question.Places.Count + joints)))
        {
            var digits = Enumerable.Range(0, 1 + question.Places.Count + joints).Select(place => code / (int)Math.Pow(5, place) % 5)
                .ToArray();
            var weight = question.Grades[digits[0]];
            for (var place = 0; place < question.Places.Count; place++)
                weight *= question.Places[place].Levels[digits[0]][digits[1 + place]];
            var levels = digits[(1 + question.Places.Count)..];
            for (var joint = 0; joint < joints; joint++)
                weight *= question.Joints[joint].Levels[digits[1 + question.Joints[joint].Place]][levels[joint]];
            _states.Add((weight, levels));
        }

        var all = _states.Sum(state => state.Weight);
        _states = _states.GroupBy(state => string.Join(',', state.Levels))
            .Select(group => (group.Sum(state => state.Weight) / all, group.First().Levels)).ToList();
    }

    /// <summary>Every choice of accesses now with its least expected minutes.</summary>
    public Dictionary<int, double> All() => Enumerable.Range(0, 1 << _question.Openings.Count).ToDictionary(first => first, Least);

    /// <summary>The best set to have open for the end, for the joints that came free in the first tries.</summary>
    public int Then(int first, bool[] free) => Choice(first, free).Then;

    public double Opening(int first, int then) => first == then ? 0
        : (double)_question.Later.Once.Value + (_question.Later.Factor * (Minutes(then) - Minutes(first)));

    public double Minutes(int accesses) => _question.Openings.Where((_, number) => (accesses >> number & 1) == 1)
        .SelectMany(access => access.Steps).Distinct().Sum(step => (double)_question.Steps[step].Takes.Value);

    /// <summary>Hidden levels of all joints with their chance.</summary>
    public IReadOnlyList<(double Weight, int[] Levels)> States => _states;

    /// <summary>The tries of a joint before anything more is opened.</summary>
    public ValueList<Rung> FirstTries(int joint, int open)
    {
        var one = _question.Joints[joint];
        var wants = Wants(joint);
        if ((wants & ~open) == 0)
            return [];
        var wanting = Enumerable.Range(0, _question.Joints.Count).Count(other => (Wants(other) & wants & ~open) != 0);
        var goesOn = (Minutes(wants & ~open) / wanting) + TryPlanner.Best(Question(joint, wants)).ExpectedMinutes;
        Rung last = new() { Id = "last", Says = "Go on", Takes = new((decimal)goesOn), Odds = [1, 1, 1, 1, 1] };
        var question = Question(joint, open);
        var ladders = question.Ladders.ToDictionary(pair => pair.Key, pair => pair.Value with { Rungs = [.. pair.Value.Rungs, last] });
        return TryPlanner.Best(question with { Ladders = ladders }).IfHeld
            .Select(id => ladders[one.Condition].Rungs.First(rung => rung.Id == id))
            .TakeWhile(rung => !rung.IsSure).ToValueList();
    }

    /// <summary>The tries of a joint to the end, after others have failed; null when none is sure.</summary>
    public ValueList<Rung>? LastTries(int joint, int open, JointCondition condition, ValueList<Rung> failed, bool isSoaked)
    {
        var question = Question(joint, open) with { Condition = condition, IsSoaked = isSoaked };
        if (!Ends(question.Ladders, question.Condition))
            return null;
        if (condition == _question.Joints[joint].Condition)
        {
            double[] belief = [.. question.Belief];
            var soaked = _question.Joints[joint].IsSoaked;
            foreach (var rung in failed)
            {
                belief = [.. belief.Select(
                    (chance, level) => chance * (1 - rung.OddsAt(level, soaked) - rung.Mishaps.Sum(mishap => mishap.Odds[level])))];
                soaked |= rung.IsSoak;
            }

            question = question with
            { Belief = [.. belief.Select(chance => chance / belief.Sum())], Tried = failed.Select(rung => rung.Id).ToValueList() };
        }

        return TryPlanner.Best(question).IfHeld.Select(id => question.Ladders[condition].Rungs.First(rung => rung.Id == id)).ToValueList();
    }

    private static bool Ends(IReadOnlyDictionary<JointCondition, Ladder> ladders, JointCondition condition) =>
        ladders[condition].Rungs.Any(rung => rung.IsSure)
        && ladders[condition].Rungs.SelectMany(rung => rung.Mishaps).All(mishap => Ends(ladders, mishap.Becomes));

    private double Least(int first) => Minutes(first) + Enumerable.Range(0, 1 << _question.Joints.Count)
        .Sum(outcome => Choice(first,
            [.. Enumerable.Range(0, _question.Joints.Count).Select(joint => (outcome >> joint & 1) == 1)]).Minutes)
        + Enumerable.Range(0, _question.Joints.Count)
            .Sum(joint => _states.Sum(state => state.Weight * Walk(joint, first, first, state.Levels[joint], upTo: true).Minutes));

    private (int Then, double Minutes) Choice(int first, bool[] free) => Enumerable.Range(0, 1 << _question.Openings.Count)
        .Where(then => (then & first) == first).Select(then => (then, Expected(first, then, free))).MinBy(pair => pair.Item2);

    private double Expected(int first, int then, bool[] free) => _states.Sum(state =>
    {
        var walks = free.Select((_, joint) => Walk(joint, first, then, state.Levels[joint], upTo: false)).ToList();
        var chances = walks.Select((walk, joint) => free[joint] ? walk.Free : 1 - walk.Free).ToList();
        var minutes = chances.Aggregate(1.0, (product, chance) => product * chance) * Opening(first, then);
        for (var joint = 0; joint < free.Length; joint++)
            minutes += free[joint]
                ? 0
                : Times(chances.Where((_, other) => other != joint).Aggregate(1.0, (product, chance) => product * chance),
                    walks[joint].Minutes);
        return Times(state.Weight, minutes);
    });

    /// <param name="upTo">Whether the minutes are those of the first tries, else those of the end
    /// times the chance of getting there.</param>
    private (double Free, double Minutes) Walk(int joint, int first, int then, int level, bool upTo)
    {
        if (!_finishes.TryGetValue((joint, first, then), out var row))
        {
            row = new double[15];
            for (var one = 0; one < 5; one++)
                (row[one], row[5 + one], row[10 + one]) =
                    Recurse(joint, then, FirstTries(joint, first), 0, one, _question.Joints[joint].IsSoaked);
            _finishes.Add((joint, first, then), row);
        }

        return (row[level], upTo ? row[5 + level] : row[10 + level]);
    }

    private (double Free, double First, double Last) Recurse(int joint, int then, ValueList<Rung> tries, int next, int level, bool isSoaked)
    {
        var condition = _question.Joints[joint].Condition;
        if (next == tries.Count)
            return (0, 0, End(joint, then, LastTries(joint, then, condition, tries, isSoaked), condition, 0, level, isSoaked));
        var rung = tries[next];
        var rest = Recurse(joint, then, tries, next + 1, level, isSoaked || rung.IsSoak);
        var (freed, worse) = (rung.OddsAt(level, isSoaked), rung.Mishaps.Sum(mishap => mishap.Odds[level]));
        var ends = rung.Mishaps
            .Sum(mishap => Times(mishap.Odds[level],
                End(joint, then, LastTries(joint, then, mishap.Becomes, [], isSoaked), mishap.Becomes, 0, level, isSoaked)));
        var holds = 1 - freed - worse;
        return (freed + (holds * rest.Free), MinutesOf(rung) + (holds * rest.First), ends + Times(holds, rest.Last));
    }

    private double End(int joint, int then, ValueList<Rung>? tries, JointCondition condition, int next, int level, bool isSoaked)
    {
        if (tries is null)
            return double.PositiveInfinity;
        var rung = tries[next];
        var minutes = MinutesOf(rung) + rung.Mishaps.Sum(mishap =>
            mishap.Odds[level] * End(joint, then, LastTries(joint, then, mishap.Becomes, [], isSoaked), mishap.Becomes, 0, level,
                isSoaked));
        var holds = 1 - rung.OddsAt(level, isSoaked) - rung.Mishaps.Sum(mishap => mishap.Odds[level]);
        return rung.IsSure ? minutes : minutes + (holds * End(joint, then, tries, condition, next + 1, level, isSoaked || rung.IsSoak));
    }

    /// <summary>What cannot happen costs nothing, even where it would never end.</summary>
    private static double Times(double chance, double minutes) => chance == 0 ? 0 : chance * minutes;

    public static double MinutesOf(Rung rung) => (double)rung.Takes.Value + ((double)rung.Spends.Amount / 30 * 60);

    public int Wants(int joint) =>
        _question.Joints[joint].Needs.Values.SelectMany(needs => needs).Aggregate(0, (mask, access) => mask | (1 << access));

    private NextTryQuestion Question(int joint, int open)
    {
        var one = _question.Joints[joint];
        return new()
        {
            Ladders = one.Ladders.ToDictionary(pair => pair.Key, pair => pair.Value with
            {
                Rungs = pair.Value.Rungs
                    .Where(rung => !one.Needs.TryGetValue(rung.Id, out var needs) || needs.All(access => (open >> access & 1) == 1))
                    .ToValueList(),
            }),
            Condition = one.Condition,
            Belief = [.. one.Belief],
            IsSoaked = one.IsSoaked,
            PerHour = one.PerHour,
        };
    }
}
