using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Kits;

namespace Refettle.Cli.Verbs;

internal static class MirrorVerb
{
    public static Command Make(Desk desk)
    {
        var side = new Argument<string>("side")
        { Description = "The side that is described: left, right, fl, fr, rl or rr; a side takes its corners along." };
        return new Command("mirror", "Describes the other side like this one; what is described there already stays.") { side }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Answer(desk, open, parsed.GetRequiredValue(side).TrimEnd('-'))));
    }

    private static Reply Answer(Desk desk, OpenCar open, string side) => Spots.TryParse(side, out var spot)
        ? Reply.To(Mirror.Propose(open.Car.Structure, spot),
            mirrored => Change.Record(desk, open, [mirrored], now => Stands.After(now, Says(spot, mirrored.Added))))
        : Reply.Bad([new($"side {side}", "this is no side", "Write left, right, fl, fr, rl or rr.")]);

    private static string Says(Spot from, Structure added) =>
        $"Described {from.Mirror().Words().ToLowerInvariant()} like {from.Words().ToLowerInvariant()}: {Wording.Count(added.Parts.Count, "part")}, {Wording.Count(added.Joints.Count, "joint")}.";
}
