using System.CommandLine;
using Refettle.Edits;

namespace Refettle.Cli.Verbs;

internal static class BlockVerb
{
    public static Command Make(Desk desk)
    {
        var blocked = new Argument<string>("fact") { Description = "What is blocked: 'off(part)', 'open(joint)', 'state(state)'." };
        var by = new Option<string[]>("--by")
        { Description = "What must be true first.", HelpName = "fact", Required = true, AllowMultipleArgumentsPerToken = true };
        return new Command("block", "Says that something is in the way of every way to a fact.") { blocked, by }
            .Answers(desk, parsed => desk.WithCar(parsed, open => Reply.To(Goals.Read([parsed.GetRequiredValue(blocked)]), facts =>
                Reply.To(Goals.Read(parsed.GetRequiredValue(by)), needs => Answer(desk, open, facts[0], needs)))));
    }

    private static Reply Answer(Desk desk, OpenCar open, Fact fact, ValueList<Fact> needs)
    {
        var faults = needs.Prepend(fact).Select(known => Unknown.Subject(open.Car.Structure, known)).OfType<Fault>().ToList();
        if (fact.Kind is FactKind.Free or FactKind.Reach)
            faults.Add(new(fact.ToString(), "it has no way of its own that could be blocked",
                "Block off(part), open(joint) or state(state)."));
        return faults.Count > 0
            ? Reply.Bad(faults)
            : Change.Record(desk, open, "edit", Blocking.Of(open.Car.Structure, fact, needs),
                $"{fact} needs {string.Join(", ", needs)} first.");
    }
}
