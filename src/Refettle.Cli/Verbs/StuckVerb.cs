using System.CommandLine;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Views;
using Refettle.Sheets;
using Refettle.Stuck;

namespace Refettle.Cli.Verbs;

internal static class StuckVerb
{
    public static Command Make(Desk desk)
    {
        var joint = new Argument<string>("joint") { Description = "The joint that will not open." };
        var inHand = new Option<string[]>("--in-hand")
        { Description = "What a try would destroy and is in hand: bush, bolt, 'new fastener' …; what is on the shelf for it counts by itself", AllowMultipleArgumentsPerToken = true };
        var shielded = new Option<string[]>("--shielded")
        { Description = "Rubber or plastic parts that are shielded from heat, or all.", AllowMultipleArgumentsPerToken = true };
        var source = new CarSource();
        return source.AddTo(new("stuck", "What to try next on a joint that will not open, and what may not be tried yet.")
            { joint, inHand, shielded })
            .Answers(desk, parsed => source.With(desk, parsed, car =>
                Answer(desk, parsed, car, parsed.GetRequiredValue(joint),
                    new(All(parsed.GetValue(inHand)), All(parsed.GetValue(shielded))))));
    }

    private static ValueList<string> All(string[]? words) => (words ?? []).ToValueList();

    private static Reply Answer(Desk desk, ParseResult parsed, Car car, string joint, AtHand atHand)
    {
        ValueList<Fault> unknown = [.. Missing(Unknown.Joint(car.Structure, joint)),
            .. atHand.Shielded.Where(part => part != AtHand.All).SelectMany(part => Missing(Unknown.Part(car.Structure, part)))];
        return unknown.Count > 0 ? Reply.Bad(unknown) : Reply.To(desk.Ladders(), ladders =>
        {
            var answer = StuckAdvice.Of(car, joint, ladders, OpenShelf.AtHand(desk, parsed, car, joint, ladders, atHand),
                desk.Around.Clock.GetUtcNow());
            return new(StuckView.Of(answer, desk.Around.Clock.GetUtcNow()), answer);
        });
    }

    private static ValueList<Fault> Missing(Fault? fault) => fault is null ? [] : [fault];
}
