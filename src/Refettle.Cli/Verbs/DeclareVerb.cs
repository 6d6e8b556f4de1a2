using System.CommandLine;
using Refettle.Logbook;
using Refettle.SaleFile;

namespace Refettle.Cli.Verbs;

internal static class DeclareVerb
{
    private static readonly Dictionary<string, DeclarationTopic> Topics = new()
    {
        ["claim"] = DeclarationTopic.Claim,
        ["open"] = DeclarationTopic.Open,
        ["road-test"] = DeclarationTopic.RoadTest,
        ["title"] = DeclarationTopic.Title,
        ["recall"] = DeclarationTopic.Recall,
        ["modification"] = DeclarationTopic.Modification,
    };

    public static Command Make(Desk desk)
    {
        var topic = new Argument<string>("topic")
        { Description = "claim, open (a known fault), road-test, title, recall or modification." };
        var text = new Argument<string>("text") { Description = "What you state." };
        var about = new Option<string>("--about") { Description = "The thing it is about: \"part x\" …; by default the car." };
        var because = new Option<string[]>("--because")
        { Description = "Marks of the entries that show it.", AllowMultipleArgumentsPerToken = true };
        topic.AcceptOnlyFromAmong([.. Topics.Keys]);
        return new Command("declare",
            "States something for the sale file. Words that promise too much are pointed out, with what can be said instead.") { topic,
                text, about, because }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Marks.FindAll(open, parsed.GetValue(because) ?? []), shown =>
            {
                var declared =
                    new Declared(Topics[parsed.GetRequiredValue(topic)], parsed.GetRequiredValue(text), parsed.GetValue(about), shown);
                return desk.Record(open, [declared], now => Stands.After(now, "Stated.")).With(Flags(declared));
            })));
    }

    private static ValueList<Fault> Flags(Declared declared) => WordingGuard.Of(declared.Text, declared.Because.Count > 0)
        .Select(claim => new Fault($"“{claim.Words}”", claim.Why, $"Say instead: {claim.Offer}") { Severity = Severity.Note })
        .ToValueList();
}
