using System.CommandLine;
using Refettle.Checks;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class CheckVerb
{
    public static Command Make(Desk desk)
    {
        var source = new CarSource();
        return source.AddTo(new("check", "Whether the description makes sense: all faults at once."))
            .Answers(desk, parsed => source.With(desk, parsed, Answer));
    }

    private static Reply Answer(Car car)
    {
        var faults = StructureCheck.Of(car.Structure);
        var errors = faults.Count(fault => fault.Severity == Severity.Error);
        var defaults = car.Structure.Joints.Count(joint => joint.Ways.All(way => way.Origin == Origin.Default));
        var says = errors > 0
            ? $"{Wording.Count(errors, "fault")}."
            : $"No fault in {Wording.Count(car.Structure.Parts.Count, "part")} and {Wording.Count(car.Structure.Joints.Count, "joint")}; minutes by default on {Wording.Count(defaults, "joint")}.";
        return Reply.Said(says,
            new
            {
                car = car.Id,
                parts = car.Structure.Parts.Count,
                joints = car.Structure.Joints.Count,
                defaultJoints = defaults,
                faults
            }) with
        {
            Code = errors > 0 ? ExitCode.Faults : ExitCode.Good,
            Faults = faults,
        };
    }
}
