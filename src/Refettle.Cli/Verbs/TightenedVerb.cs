using System.CommandLine;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary><c>snugged</c> and <c>torqued</c>.</summary>
internal static class TightenedVerb
{
    public static Command Snugged(Desk desk)
    {
        var joints = Joints();
        return new Command("snugged", "Records that joints are closed and snug only: their torque comes later.") { joints }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Record(desk, open, parsed.GetRequiredValue(joints), Tightness.Snug, null, null, null)));
    }

    public static Command Torqued(Desk desk)
    {
        var joints = Joints();
        var torque = new Option<string?>("--at") { Description = "Reading or setting, such as 60Nm." };
        var instrument = new Option<string?>("--with") { Description = "The wrench." };
        var by = new Option<string?>("--by") { Description = "Who did it." };
        return new Command("torqued", "Records that joints are closed and torqued.") { joints, torque, instrument, by }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Read(parsed.GetValue(torque)), value =>
                Record(desk, open, parsed.GetRequiredValue(joints), Tightness.Torqued, value.Torque, parsed.GetValue(instrument), parsed.GetValue(by)))));
    }

    private static Argument<string[]> Joints() => new("joint") { Description = "The joints.", Arity = ArgumentArity.OneOrMore };

    /// <summary>A joint that the log has open is closed by this too.</summary>
    private static Reply Record(Desk desk, OpenCar open, string[] joints, Tightness how, NewtonMetres? torque, string? instrument, string? by)
    {
        var faults = joints.Select(joint => Unknown.Subject(open.Car.Structure, Fact.Open(joint))).OfType<Fault>().ToList();
        if (faults.Count > 0)
            return Reply.Bad(faults);
        var closed = joints.Select(Fact.Open).Where(open.Car.Done.Contains).Select(fact => new StepReversed(fact, null));
        var tightened = joints.Select(joint => new JointTightened(joint, how, torque, instrument, by));
        var says = $"{string.Join(", ", joints)}: {(how == Tightness.Snug ? "snug only" : "torqued")}{(torque is null ? "" : $", {torque}")}.";
        return desk.Record(open, [.. closed, .. tightened], now => Stands.After(now, says));
    }

    private static Result<(NewtonMetres? Torque, string? Text)> Read(string? text)
    {
        if (text is null)
            return Result<(NewtonMetres?, string?)>.Good((null, null));
        var read = Measure.Read("--at", text, Dimension.Torque);
        return read.IsGood
            ? Result<(NewtonMetres?, string?)>.Good((new NewtonMetres(Math.Round((decimal)Math.Clamp(read.Value.In(Units.NewtonMetre), -1e6, 1e6), 2)), text))
            : Result<(NewtonMetres?, string?)>.Bad(read.Faults);
    }
}
