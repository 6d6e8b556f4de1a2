using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Cli.Verbs;

internal static class OpenUpVerb
{
    public static Command Make(Desk desk)
    {
        var joints = new Argument<string[]>("joint")
        { Description = "The joints that will not open, together.", Arity = ArgumentArity.OneOrMore };
        var planned = new Option<string[]>("--planned")
        { Description = "What will be done anyway: 'off(exhaust)' …", HelpName = "fact", AllowMultipleArgumentsPerToken = true };
        var shielded = new Option<string[]>("--shielded")
        {
            Description = "Rubber or plastic parts that will be shielded from heat; what is not named has to come off. All by default.",
            AllowMultipleArgumentsPerToken = true
        };
        var once = new Option<decimal>("--later-minutes")
        { Description = "What opening later costs on top, once.", DefaultValueFactory = _ => Later.CommonPractice.Once.Value };
        var factor = new Option<double>("--later-factor")
        {
            Description = "What opening later takes, as a multiple of opening now.",
            DefaultValueFactory = _ => Later.CommonPractice.Factor
        };
        var source = new CarSource();
        return source.AddTo(new("open-up", "Whether to open things up before stuck joints are tried, or to try first.")
            { joints, planned, shielded, once, factor })
            .Answers(desk, parsed => source.With(desk, parsed, car => Reply.To(Goals.Read(parsed.GetValue(planned) ?? []), facts => Answer(
                desk, car, parsed.GetRequiredValue(joints).Distinct().ToValueList(), facts,
                new([], parsed.GetResult(shielded) is null ? [AtHand.All] : (parsed.GetValue(shielded) ?? []).ToValueList()),
                parsed.GetValue(once), parsed.GetValue(factor)))));
    }

    private static Reply Answer(
        Desk desk, Car car, ValueList<string> joints, ValueList<Fact> planned, AtHand atHand, decimal once, double factor)
    {
        var faults = joints.Select(joint => Unknown.Joint(car.Structure, joint))
            .Concat(planned.Select(fact => Unknown.Subject(car.Structure, fact)))
            .Concat(atHand.Shielded.Where(part => part != AtHand.All).Select(part => Unknown.Part(car.Structure, part)))
            .Append(once is < 0 or > Minutes.Max ? new Fault("--later-minutes", $"it is {once}", $"Give 0 to {Minutes.Max}.") : null)
            .Append(factor is < 1 or > 100 ? new Fault("--later-factor", $"it is {factor}", "Give 1 to 100.") : null)
            .OfType<Fault>().ToList();
        return faults.Count > 0
            ? Reply.Bad(faults)
            : Reply.To(desk.Ladders(), ladders => Decide(desk, car, joints, planned, ladders, atHand, new(new(once), factor)));
    }

    private static Reply Decide(
        Desk desk, Car car, ValueList<string> joints, ValueList<Fact> planned, LadderSet ladders, AtHand atHand, Later later)
    {
        var free = joints.Where(joint => TriesSoFar.Of(car, car.Structure.Joints.First(one => one.Id == joint),
            ladders).Condition == JointCondition.Freed).ToList();
        if (free.Count > 0)
            return Reply.Bad(free.Select(joint => new Fault($"joint {joint}", "it came free already", "Leave it out.")));
        return Reply.To(OpenUpCase.Of(car, joints, planned, ladders, atHand, later, desk.Planner, desk.Around.Interrupt), made =>
        {
            var answer = OpenUpPlanner.Best(made.Question, () => new Random(1));
            return new(OpenUpView.Of(made, answer), OpenUpReport.Of(made, answer));
        });
    }
}
