using System.CommandLine;
using Refettle.Bench;
using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class AlignmentVerb
{
    public static Command Make(Desk desk)
    {
        var when = new Argument<string>("when") { Description = "found: before the strip; set: as it is now." };
        var corners = RideHeightLedger.Corners
            .Select(corner => new Option<string?>($"--{corner}")
            { Description = "Degrees, such as \"toe 0.10 camber -0.50 caster 3.2\"; toe of this wheel, toe-in positive." }).ToList();
        var thrust = new Option<string?>("--thrust") { Description = "Of the rear axle, positive to the right: 0.05deg." };
        var instrument = new Option<string?>("--with") { Description = "Rig or gauge." };
        var by = new Option<string?>("--by") { Description = "Who measured." };
        var verb = new Command("alignment", "Records wheel angles, as found or as set.") { when, thrust, instrument, by };
        corners.ForEach(verb.Add);
        return verb.Answers(desk, parsed => desk.WithCar(parsed, open =>
        {
            var wheels = corners.Select((option, i) => (Corner: RideHeightLedger.Corners[i], Text: parsed.GetValue(option)))
                .Where(given => given.Text is not null)
                .Select(given => AlignmentWords.Read(given.Corner, given.Text!)).ToList();
            var (found, line) = (AsFound(parsed.GetRequiredValue(when)), Degrees(parsed.GetValue(thrust)));
            var faults = wheels.SelectMany(wheel => wheel.Faults).Concat(found.Faults).Concat(line.Faults).ToList();
            if (faults.Count > 0)
                return Reply.Bad(faults);
            var measured = new AlignmentMeasured(found.Value, wheels.Select(wheel => wheel.Value).ToValueList(), line.Value,
                parsed.GetValue(instrument), parsed.GetValue(by));
            return desk.Record(open, [measured], now => Stands.After(now, $"{AlignmentWords.Of(measured)}."));
        }));
    }

    private static Result<bool> AsFound(string word) => word.ToLowerInvariant() switch
    {
        "found" => Result<bool>.Good(true),
        "set" => Result<bool>.Good(false),
        _ => Result<bool>.Bad(new Fault("alignment", $"\"{word}\" is neither found nor set",
            "Say found for the angles before the strip, set for those now.")),
    };

    private static Result<decimal?> Degrees(string? text)
    {
        if (text is null)
            return Result<decimal?>.Good(null);
        var read = Measure.Read("--thrust", text, Dimension.Angle);
        return read.IsGood
            ? Result<decimal?>.Good(Math.Round((decimal)Math.Clamp(read.Value.In(Units.Degree), -1000, 1000), 3))
            : Result<decimal?>.Bad(read.Faults);
    }
}
