using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Judging;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class VerdictVerb
{
    private static readonly Dictionary<string, VerdictKind> Kinds = Enum.GetValues<VerdictKind>()
        .ToDictionary(kind => kind.ToString().ToLowerInvariant());

    public static Command Make(Desk desk)
    {
        var parts = new Argument<string[]>("part")
        { Description = "The parts; nothing for all of which something was found.", Arity = ArgumentArity.ZeroOrMore };
        var planned = new Option<string[]>("--planned")
        {
            Description = "What will be done anyway: what that opens costs nothing more.",
            HelpName = "fact",
            AllowMultipleArgumentsPerToken = true
        };
        var decide = new Option<string?>("--decide")
        { Description = $"Your own word: {string.Join(", ", Kinds.Keys)}.", HelpName = "verdict" };
        var outside = new Option<bool?>("--outside") { Description = "An outside shop does it." };
        var why = new Option<string?>("--why") { Description = "Why; of the same verdict given again what is not said stays." };
        var withdraw = new Option<bool>("--withdraw") { Description = "Leaves it to the suggestion again." };
        return new Command("verdict",
            "What to do with parts: keep, refurbish, replace, substitute, with the sums behind it. Your own word stays.") { parts, planned,
                decide, outside, why, withdraw }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read(parsed.GetValue(planned) ?? []), facts =>
            {
                var asked = (parsed.GetValue(parts) ?? []).Distinct().ToValueList();
                var faults = asked.Select(part => Unknown.Part(open.Car.Structure, part))
                    .Concat(facts.Select(fact => Unknown.Subject(open.Car.Structure, fact))).OfType<Fault>().ToList();
                if (faults.Count > 0)
                    return Reply.Bad(faults);
                if (parsed.GetValue(withdraw))
                    return desk.Record(open, asked.Select(part => new VerdictWithdrawn(part)).ToList(),
                        now => Discovered.With(desk, open, now, Suggest(desk, now.Car, asked, facts)));
                return parsed.GetValue(decide) is { } word
                    ? Decide(desk, open, asked, word, parsed.GetValue(outside), parsed.GetValue(why), facts)
                    : Suggest(desk, open.Car, asked, facts);
            })));
    }

    private static Reply Decide(
        Desk desk, OpenCar open, ValueList<string> parts, string word, bool? outside, string? why, ValueList<Fact> planned)
    {
        if (!Kinds.TryGetValue(word, out var kind))
            return Reply.Bad([new("--decide", $"\"{word}\" is no verdict", $"Write {string.Join(", ", Kinds.Keys)}.")]);
        if (parts.Count == 0)
            return Reply.Bad([new("--decide", "no part is named", "Name one or more.")]);
        var given = parts.Select(part => new VerdictGiven(Given(open.Car, part, kind, outside, why))).ToList();
        return desk.Record(open, given, now => Discovered.With(desk, open, now, Suggest(desk, now.Car, parts, planned)));
    }

    /// <summary>The same verdict given again keeps what is not said; another one has reasons of its own.</summary>
    private static Verdict Given(Car car, string part, VerdictKind kind, bool? outside, string? why)
    {
        var was = car.Verdicts.FirstOrDefault(verdict => verdict.Part == part && verdict.Kind == kind);
        return new(part, kind, outside is { } said ? said ? DoneBy.OutsideShop : DoneBy.Self : was?.By ?? DoneBy.Self, why ?? was?.Why);
    }

    private static Reply Suggest(Desk desk, Car car, ValueList<string> parts, ValueList<Fact> planned) =>
        Reply.To(desk.Ladders(), ladders =>
    {
        var days = car.DaysLeft(new Timeline.Days(desk.Around, car).NowHere.Date.ToDateOnly());
        var answers = new VerdictPlanner(desk.Planner)
            .Of(car, new() { Parts = parts, Planned = planned, DaysLeft = days, Ladders = ladders }, desk.Around.Interrupt);
        return new(VerdictView.Of(car, answers, parts.Count > 0, days), new { daysLeft = days, verdicts = answers });
    });
}
