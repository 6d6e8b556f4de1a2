using System.CommandLine;
using Refettle.Bench;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class HeightVerb
{
    public static Command Make(Desk desk)
    {
        var corner = new Argument<string>("corner") { Description = "fl, fr, rl or rr." };
        var height = new Argument<string>("height") { Description = "From hub centre to wheel arch, the car on its wheels: 382mm." };
        return new Command("height", "Records the ride height of a corner, before the strip.") { corner, height }
            .Answers(desk,
                parsed => desk.WithCar(parsed,
                    open => Reply.To(Measure.Read("height", parsed.GetRequiredValue(height), Dimension.Length), measure =>
            {
                var measured = new HeightMeasured(parsed.GetRequiredValue(corner),
                    new(Math.Round((decimal)Math.Clamp(measure.In(Units.Millimetre), -1e6, 1e6), 1)));
                return desk.Record(open, [measured],
                    now => Stands.After(now, $"{measured.Corner}: {measured.Height} from hub centre to wheel arch."));
            })));
    }
}
