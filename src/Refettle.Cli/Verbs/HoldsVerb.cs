using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class HoldsVerb
{
    public static Command Make(Desk desk)
    {
        var part = new Argument<string>("part") { Description = "The part." };
        var source = new CarSource();
        return source.AddTo(new("holds", "What still holds a part on the car as it stands.") { part })
            .Answers(desk, parsed => source.With(desk, parsed, car => Answer(car, parsed.GetRequiredValue(part))));
    }

    private static Reply Answer(Car car, string part)
    {
        if (Unknown.Part(car.Structure, part) is { } fault)
            return Reply.Bad([fault]);
        var answer = Holds.Of(car, part);
        return new(HoldsView.Of(answer), answer);
    }
}
