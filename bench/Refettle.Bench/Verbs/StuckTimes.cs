using System.Diagnostics;
using Refettle.Sheets;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Bench.Verbs;

/// <summary><c>stuck</c>: what is believed, the next try, what to open first; the last beside the same question
/// with every joint taken by itself.</summary>
internal static class StuckTimes
{
    private const int Rounds = 21;

    public static int Run(string[] args)
    {
        var ladders = LadderReader.Load(Path.Combine(args.Length > 0 ? args[0] : ".", "ladders"));
        if (!ladders.IsGood)
        {
            Console.Error.WriteLine(ladders.Faults[0]);
            return 1;
        }

        var bolt = ladders.Value.For(JointKind.Bolt);
        Console.WriteLine($"belief of 20 joints and next try of one: {Median(() => Next(bolt)):0.0} ms\n");
        Console.WriteLine("| joints | openings | ms | every joint by itself, ms | ratio |\n|---|---|---|---|---|");
        foreach (var (joints, openings) in new[] { (4, 3), (6, 3), (8, 3), (10, 3), (20, 6) })
        {
            var question = Question(bolt, joints, openings);
            OpenUpPlanner.Best(question, () => new(1));
            var own = Median(() => OpenUpPlanner.Best(question, () => new(1)));
            var plain = joints > 10 ? (double?)null : Median(() => OpenUpPlanner.Best(Apart(question), () => new(1)));
            Console.WriteLine(
                $"| {joints} | {openings} | {own:0.0} | {(plain is { } time ? $"{time:0.0}" : "too many outcomes")} | {(plain is { } ratio ? $"{ratio / own:0.0}" : "")} |");
        }

        Console.WriteLine($"\nMedians of {Rounds}. {Machine.Line}.");
        return 0;
    }

    private static void Next(IReadOnlyDictionary<JointCondition, Ladder> bolt)
    {
        var rung = bolt[JointCondition.Sound].Rungs[0];
        var attempts = Enumerable.Range(0, 20).Select(number => new Attempt(new($"j{number}", rung.Id, null, false, null), rung));
        var belief = new SeizureBelief(SeizureModel.CommonPractice, joint => ($"z{joint.Length}", 4), attempts).Joint("j1");
        TryPlanner.Best(new() { Ladders = bolt, Belief = belief });
    }

    /// <summary>Joints in four corners: flame and cutting want what all share, heat what its corner
    /// needs, as on a car with its tank in.</summary>
    private static OpenUpQuestion Question(IReadOnlyDictionary<JointCondition, Ladder> bolt, int joints, int openings)
    {
        var belief = new SeizureBelief(SeizureModel.CommonPractice, joint => (joint, 4), []);
        var places = Math.Min(4, openings - 1);
        return new()
        {
            Openings = Enumerable.Range(0, openings).Select(number => new Opening($"o{number}", "Opening", [], [0, number + 1]))
                .ToValueList(),
            Steps = Enumerable.Range(0, openings + 1).Select(number => new OpeningStep("Step", new(15 + (20 * number)))).ToValueList(),
            Grades = belief.GradesBut([]).ToValueList(),
            Places = Enumerable.Range(0, places).Select(number => new Place($"z{number}", 4, belief.LevelsAt(($"z{number}", 4))))
                .ToValueList(),
            Joints = Enumerable.Range(0, joints).Select(number => new StuckJoint
            {
                Id = $"j{number}",
                Place = number % places,
                Levels = belief.LevelsOf($"j{number}"),
                Belief = belief.Joint($"j{number}").ToValueList(),
                Ladders = bolt,
                Needs = bolt.Values.SelectMany(ladder => ladder.Rungs).DistinctBy(rung => rung.Id).Where(rung => rung.Danger != Danger.None)
                    .ToDictionary(rung => rung.Id,
                        rung => (ValueList<int>)((rung.Danger & Danger.Fire) != 0
                            ? [0, 1 + (number % (openings - 1))]
                            : [1 + (number % (openings - 1))])),
            }).ToValueList(),
        };
    }

    /// <summary>The same, but no two joints are taken to be alike: every outcome of every joint is enumerated.</summary>
    private static OpenUpQuestion Apart(OpenUpQuestion question) => question with
    {
        Joints = question.Joints.Select((joint, number) => joint with
        {
            Levels = joint.Levels
                .Select(levels => levels.Select((chance, level) => chance * (level == 0 ? 1 + (1e-13 * number) : 1)).ToValueList())
                .ToValueList(),
        }).ToValueList(),
    };

    private static double Median(Action ask)
    {
        var times = Enumerable.Range(0, Rounds).Select(_ =>
        {
            var clock = Stopwatch.StartNew();
            ask();
            return clock.Elapsed.TotalMilliseconds;
        }).Order().ToList();
        return times[Rounds / 2];
    }
}
