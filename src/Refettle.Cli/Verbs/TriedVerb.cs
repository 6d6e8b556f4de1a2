using System.CommandLine;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Stuck;

namespace Refettle.Cli.Verbs;

internal static class TriedVerb
{
    private const string Held = "held";

    private static readonly Dictionary<string, JointCondition> Outcomes =
        Enum.GetValues<JointCondition>().Where(condition => condition != JointCondition.Sound).ToDictionary(StuckView.Word);

    public static Command Make(Desk desk)
    {
        var joint = new Argument<string>("joint") { Description = "The joint." };
        var rung = new Option<string>("--step") { Description = "The try, by the name that `stuck` gives it.", Required = true };
        var outcome = new Option<string>("--outcome")
        { Description = $"What came of it: {Held}, {string.Join(", ", Outcomes.Keys)}.", Required = true };
        var soaked = new Option<bool>("--soaked") { Description = "It had soaked before." };
        var minutes = new Option<decimal?>("--minutes") { Description = "How long it took." };
        return new Command("tried", "Records a try at a joint; the next advice learns from it.") { joint, rung, outcome, soaked, minutes }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(desk.Ladders(), ladders =>
                Record(desk, parsed, open, ladders, parsed.GetRequiredValue(joint), parsed.GetRequiredValue(rung),
                    parsed.GetRequiredValue(outcome),
                    parsed.GetValue(soaked), parsed.GetValue(minutes)))));
    }

    private static Reply Record(
        Desk desk, ParseResult parsed, OpenCar open, LadderSet ladders, string joint, string rung, string outcome, bool isSoaked,
        decimal? minutes)
    {
        if (Unknown.Joint(open.Car.Structure, joint) is { } unknown)
            return Reply.Bad([unknown]);
        var kind = open.Car.Structure.Joints.Single(known => known.Id == joint).Kind;
        if (ladders.Rung(kind, rung) is null)
        {
            var rungs = ladders.For(kind).Values.SelectMany(ladder => ladder.Rungs).Select(known => known.Id).Distinct().ToList();
            return Reply.Bad([new("--step", $"there is no try \"{rung}\" for this joint",
                NearNames.Ask(rung, rungs, $"Known are {string.Join(", ", rungs)}."))]);
        }

        if (outcome != Held && !Outcomes.ContainsKey(outcome))
            return Reply.Bad([new("--outcome", $"\"{outcome}\" is not an outcome", $"Write {Held}, {string.Join(", ", Outcomes.Keys)}.")]);
        JointCondition? becomes = outcome == Held ? null : Outcomes[outcome];
        var attempt = new Try(joint, rung, becomes, isSoaked, minutes is { } took ? new Minutes(took) : null);
        return desk.Record(open, [new Tried(attempt)], now =>
        {
            var answer = StuckAdvice.Of(now.Car, joint, ladders, OpenShelf.AtHand(desk, parsed, now.Car, joint, ladders, AtHand.Nothing),
                desk.Around.Clock.GetUtcNow());
            return Discovered.With(desk, open, now, new(StuckView.Of(answer, desk.Around.Clock.GetUtcNow()), answer));
        });
    }
}
