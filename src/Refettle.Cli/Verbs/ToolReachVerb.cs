using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;
using Refettle.Stuck;

namespace Refettle.Cli.Verbs;

/// <summary><c>tool-reach</c> and <c>leave</c>: what the owner says of single tries at single joints.</summary>
internal static class ToolReachVerb
{
    public static Command Reach(Desk desk)
    {
        var (joint, step) = (Joint(), Step());
        var reaches = new Argument<string>("reaches") { Description = "yes or no." };
        var once = new Option<string[]>("--once")
        {
            Description = "What has to be true for it to reach: 'off(exhaust)'.",
            HelpName = "fact",
            AllowMultipleArgumentsPerToken = true
        };
        return new Command("tool-reach",
            "Records whether the tool of a try gets at a joint; a try that does not reach is not offered.") { joint, step, reaches, once }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read(parsed.GetValue(once) ?? []), facts =>
                parsed.GetRequiredValue(reaches) is not ("yes" or "no") and var odd
                    ? Reply.Bad([new("reaches", $"\"{odd}\" is neither yes nor no", "Write yes or no.")])
                    : Told(desk, open, parsed.GetRequiredValue(joint), parsed.GetRequiredValue(step),
                        new ReachJudged(new(parsed.GetRequiredValue(joint), parsed.GetRequiredValue(step),
                            parsed.GetRequiredValue(reaches) == "yes", facts))))));
    }

    public static Command Leave(Desk desk)
    {
        var (joint, step) = (Joint(), Step());
        var why = new Option<string>("--why") { Description = "Why it cannot wait; it stays in the log.", Required = true };
        return new Command("leave",
            "Gives leave for one try although what it destroys is not in hand. No other gate opens by this.") { joint, step, why }
            .Answers(desk,
                parsed => desk.WithCar(parsed, open => Told(desk, open, parsed.GetRequiredValue(joint), parsed.GetRequiredValue(step),
                new MissingAccepted(parsed.GetRequiredValue(joint), parsed.GetRequiredValue(step), parsed.GetRequiredValue(why)))));
    }

    private static Argument<string> Joint() => new("joint") { Description = "The joint." };

    private static Argument<string> Step() => new("step") { Description = "The try, by the name that `stuck` gives it." };

    private static Reply Told(Desk desk, OpenCar open, string joint, string step, Happening happening) =>
        Reply.To(desk.Ladders(), ladders =>
    {
        if (Unknown.Joint(open.Car.Structure, joint) is { } unknown)
            return Reply.Bad([unknown]);
        var kind = open.Car.Structure.Joints.First(one => one.Id == joint).Kind;
        if (ladders.Rung(kind, step) is null)
        {
            var rungs = ladders.For(kind).Values.SelectMany(ladder => ladder.Rungs).Select(rung => rung.Id).Distinct().ToList();
            return Reply.Bad([new("step", $"there is no try \"{step}\" for this joint",
                NearNames.Ask(step, rungs, $"Known are {string.Join(", ", rungs)}."))]);
        }

        return desk.Record(open, [happening], now =>
        {
            var answer = StuckAdvice.Of(now.Car, joint, ladders, AtHand.Nothing, desk.Around.Clock.GetUtcNow());
            return new(StuckView.Of(answer, desk.Around.Clock.GetUtcNow()), answer);
        });
    });
}
