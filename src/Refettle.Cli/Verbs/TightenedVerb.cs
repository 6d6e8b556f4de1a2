using System.CommandLine;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary><c>snugged</c> and <c>torqued</c>.</summary>
internal static class TightenedVerb
{
    private static readonly Dictionary<string, TighteningCheck> _checks = new()
    { ["second-person"] = TighteningCheck.SecondPerson, ["paint-mark"] = TighteningCheck.PaintMark };

    public static Command Snugged(Desk desk)
    {
        var joints = Joints();
        return new Command("snugged", "Records that joints are closed and snug only: their torque comes later.") { joints }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Record(desk, open, parsed.GetRequiredValue(joints), new("", Tightness.Snug, null, null, null))));
    }

    public static Command Torqued(Desk desk)
    {
        var joints = Joints();
        var torque = new Option<string?>("--at") { Description = "Reading or setting, such as 60Nm." };
        var instrument = new Option<string?>("--with") { Description = "The wrench." };
        var by = new Option<string?>("--by") { Description = "Who did it." };
        var checks = new Option<string[]>("--check")
        { Description = "How it was looked at once more: second-person, paint-mark.", AllowMultipleArgumentsPerToken = true };
        checks.AcceptOnlyFromAmong(_checks.Keys.ToArray());
        return new Command("torqued", "Records that joints are closed and torqued.") { joints, torque, instrument, by, checks }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Read(parsed.GetValue(torque)), value =>
                Record(desk, open, parsed.GetRequiredValue(joints),
                    new("", Tightness.Torqued, value.Torque, parsed.GetValue(instrument), parsed.GetValue(by))
                    { Checks = Checks(parsed.GetValue(checks)) }))));
    }

    private static ValueList<TighteningCheck>? Checks(string[]? words) =>
        words is { Length: > 0 } ? words.Distinct().Select(word => _checks[word]).ToValueList() : null;

    private static Argument<string[]> Joints() => new("joint") { Description = "The joints.", Arity = ArgumentArity.OneOrMore };

    /// <summary>A joint that the log has open is closed by this too.</summary>
    /// <param name="done">What is recorded of each joint.</param>
    private static Reply Record(Desk desk, OpenCar open, string[] joints, JointTightened done)
    {
        var faults = joints.Select(joint => Unknown.Subject(open.Car.Structure, Fact.Open(joint))).OfType<Fault>().ToList();
        if (faults.Count > 0)
            return Reply.Bad(faults);
        var closed = joints.Select(Fact.Open).Where(open.Car.Done.Contains).Select(fact => new StepReversed(fact, null));
        var tightened = joints.Select(joint => done with { Joint = joint });
        var says = $"{string.Join(", ", joints)}: {(done.How == Tightness.Snug ? "snug only" : "torqued")}{(done.Torque is null ? "" : $", {done.Torque}")}{done.Told()}.";
        return desk.Record(open, [.. closed, .. tightened], now => Stands.After(now, says));
    }

    private static Result<(NewtonMetres? Torque, string? Text)> Read(string? text)
    {
        if (text is null)
            return Result<(NewtonMetres?, string?)>.Good((null, null));
        var read = Measure.Read("--at", text, Dimension.Torque);
        return read.IsGood
            ? Result<(NewtonMetres?, string?)>.Good(
                (new NewtonMetres(Math.Round((decimal)Math.Clamp(read.Value.In(Units.NewtonMetre), -1e6, 1e6), 2)), text))
            : Result<(NewtonMetres?, string?)>.Bad(read.Faults);
    }
}
