using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Tests.Stuck.OpenUp;

/// <summary>Does what the advice says on cars drawn by chance, rung by rung, and looks at the clock.</summary>
internal sealed class Mechanic(OpenUpQuestion question, Random random)
{
    private readonly DecisionTree _tree = new(question);
    private readonly Dictionary<string, int> _then = [];
    private readonly Dictionary<(int, int), ValueList<Rung>> _tries = [];
    private readonly Dictionary<string, ValueList<Rung>> _ends = [];

    public (double Mean, double Error) Mean(int first, int times)
    {
        var minutes = Enumerable.Range(0, times).Select(_ => Once(first)).ToArray();
        var mean = minutes.Average();
        return (mean, Math.Sqrt(minutes.Sum(one => (one - mean) * (one - mean)) / (times - 1) / times));
    }

    private double Once(int first)
    {
        var levels = Draw();
        var minutes = _tree.Minutes(first);
        var after = levels.Select((level, joint) => Try(joint, Tries(joint, first), level, question.Joints[joint].IsSoaked,
            JointCondition.Sound, ref minutes)).ToArray();
        var free = Array.ConvertAll(after, one => one.Condition == JointCondition.Freed);
        var key = $"{first}:{string.Join(',', free)}";
        if (!_then.TryGetValue(key, out var then))
            _then.Add(key, then = _tree.Then(first, free));
        minutes += _tree.Opening(first, then);
        for (var joint = 0; joint < levels.Length; joint++)
            minutes += free[joint] ? 0 : Finish(joint, first, then, after[joint], levels[joint]);
        return minutes;
    }

    private double Finish(int joint, int first, int then, (JointCondition Condition, bool IsSoaked) now, int level)
    {
        var minutes = 0.0;
        for (var failed = Tries(joint, first); now.Condition != JointCondition.Freed; failed = [])
        {
            var key = $"{joint},{then},{now},{string.Join(' ', failed.Select(rung => rung.Id))}";
            if (!_ends.TryGetValue(key, out var tries))
                _ends.Add(key, tries = _tree.LastTries(joint, then, now.Condition, failed, now.IsSoaked)!);
            now = Try(joint, tries, level, now.IsSoaked, now.Condition, ref minutes);
        }

        return minutes;
    }

    private (JointCondition Condition, bool IsSoaked) Try(
        int joint, ValueList<Rung> tries, int level, bool isSoaked, JointCondition condition, ref double minutes)
    {
        foreach (var rung in tries)
        {
            minutes += DecisionTree.MinutesOf(rung);
            var mark = random.NextDouble() - rung.OddsAt(level, isSoaked);
            if (mark < 0)
                return (JointCondition.Freed, isSoaked);
            foreach (var mishap in rung.Mishaps)
            {
                if ((mark -= mishap.Odds[level]) < 0)
                    return (mishap.Becomes, isSoaked);
            }

            isSoaked |= rung.IsSoak;
        }

        return (condition, isSoaked);
    }

    private ValueList<Rung> Tries(int joint, int first)
    {
        if (!_tries.TryGetValue((joint, first), out var tries))
            _tries.Add((joint, first), tries = _tree.FirstTries(joint, first));
        return tries;
    }

    private int[] Draw()
    {
        var mark = random.NextDouble();
        foreach (var (weight, levels) in _tree.States)
        {
            if ((mark -= weight) < 0)
                return levels;
        }

        return _tree.States[^1].Levels;
    }
}
