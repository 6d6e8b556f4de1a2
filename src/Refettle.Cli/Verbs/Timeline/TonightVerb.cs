using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;
using Refettle.Stock.Baskets;
using Refettle.Timeline.Tonight;

namespace Refettle.Cli.Verbs.Timeline;

internal static class TonightVerb
{
    public static Command Make(Desk desk)
    {
        var minutes = new Option<decimal>("--minutes") { Description = "How long you have.", Required = true };
        var tired = new Option<bool>("--tired") { Description = "Nothing hard: not on the back, no fire." };
        var clean = new Option<bool>("--clean") { Description = "Nothing that dirties hands and clothes." };
        var helper = new Option<bool>("--helper") { Description = "A second pair of hands is here." };
        return new Command("tonight", "What you can finish in the time you have now.") { TimelineGoals.Named, minutes, tired, clean,
            helper }
            .Answers(desk, parsed => parsed.GetValue(minutes) is not (> 0 and <= 1440)
                ? Reply.Bad([new("--minutes", $"{parsed.GetValue(minutes)} min", "Give more than 0, up to 1440.")])
                : TimelineGoals.With(desk, parsed,
                    (_, supplied) => Answer(desk, supplied, new(parsed.GetValue(minutes)), parsed.GetValue(tired), parsed.GetValue(clean),
                        parsed.GetValue(helper))));
    }

    /// <summary>What holds up the finish is known only where there are spells to make a timeline from.</summary>
    private static Reply Answer(Desk desk, SuppliedWork supplied, Minutes minutes, bool isTired, bool keepClean, bool hasHelper)
    {
        var timeline = TimelineVerb.Answer(desk, supplied, 0);
        var answer = TonightPlanner.Of(new()
        {
            Car = supplied.Work.Car,
            Network = supplied.Work.Network!,
            Now = supplied.Now,
            Minutes = minutes,
            Energy = isTired ? Energy.Low : Energy.Usual,
            KeepClean = keepClean,
            HasHelper = hasHelper,
            Critical = timeline.IsGood
                ? timeline.Value.Tasks.Where(task => task.IsCritical).Select(task => task.Task.Id).ToValueList()
                : [],
        });
        return new(TonightView.Of(supplied.Work.Car, answer, minutes, supplied.Work.Network!), TonightForm.Of(minutes, answer));
    }
}
