using System.CommandLine;
using Refettle.Bench;
using Refettle.Cli.Views;
using Refettle.CloseUp;

namespace Refettle.Cli.Verbs;

internal static class TightenVerb
{
    private const string Conditions = "dry, oiled, anti-seize or threadlocker";

    public static Command Make(Desk desk)
    {
        var joint = new Argument<string>("joint") { Description = "The joint." };
        var statedFor = new Option<string?>("--for") { Description = $"What the figure is for: a thread that is {Conditions}." };
        var fitted = new Option<string?>("--fitted") { Description = $"How the thread will be fitted: {Conditions}." };
        var rows = new Option<int?>("--rows") { Description = "The fasteners stand in so many rows; without it, on a circle." };
        var angles = new Option<string[]>("--angle") { Description = "A turn after the torque, such as 90deg; again for a further one." };
        var source = new CarSource();
        return source.AddTo(new("tighten", "How a joint is closed: order, stages, torque, what is needed new.")
            { joint, statedFor, fitted, rows, angles })
            .Answers(desk, parsed => source.With(desk, parsed, car =>
            {
                var id = parsed.GetRequiredValue(joint);
                if (Unknown.Subject(car.Structure, Fact.Open(id)) is { } fault)
                    return Reply.Bad([fault]);
                var (stated, fit, turns) = (Condition("--for", parsed.GetValue(statedFor)), Condition("--fitted", parsed.GetValue(fitted)),
                    Angles(parsed.GetValue(angles) ?? []));
                return !stated.IsGood || !fit.IsGood || !turns.IsGood
                    ? Reply.Bad(stated.Faults.Concat(fit.Faults).Concat(turns.Faults))
                    : Reply.To(ClosingCard.Of(car.Structure.Joints.First(known => known.Id == id), stated.Value, fit.Value,
                        parsed.GetValue(rows), turns.Value),
                        card => new(ClosingView.Of(card), Form(card)));
            }));
    }

    private static Result<ThreadCondition> Condition(string option, string? word) => word?.ToLowerInvariant() switch
    {
        null => Result<ThreadCondition>.Good(ThreadCondition.NotSaid),
        "dry" => Result<ThreadCondition>.Good(ThreadCondition.Dry),
        "oiled" => Result<ThreadCondition>.Good(ThreadCondition.Oiled),
        "anti-seize" => Result<ThreadCondition>.Good(ThreadCondition.AntiSeize),
        "threadlocker" => Result<ThreadCondition>.Good(ThreadCondition.Threadlocker),
        _ => Result<ThreadCondition>.Bad(new Fault(option, $"'{word}' is not a condition of a thread", $"Give {Conditions}.")),
    };

    private static Result<ValueList<decimal>> Angles(string[] texts)
    {
        var read = texts.Select(text => Measure.Read("--angle", text, Dimension.Angle)).ToList();
        return read.All(one => one.IsGood)
            ? Result<ValueList<decimal>>.Good(read.Select(one => (decimal)Math.Clamp(one.Value.In(Units.Degree), -1000, 1000))
                .ToValueList())
            : Result<ValueList<decimal>>.Bad(read.SelectMany(one => one.Faults));
    }

    private static object Form(ClosingCard card) => new
    {
        joint = card.Joint.Id,
        count = card.Joint.Count,
        torque = card.Joint.Torque,
        origin = card.Joint.Origin,
        advice = card.Advice,
        general = card.General,
        order = card.Order,
        stages = card.Stages,
        newFasteners = card.NewFasteners,
        says = card.Says,
    };
}
