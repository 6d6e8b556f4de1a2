using System.CommandLine;
using Refettle.Access;

namespace Refettle.Cli.Verbs;

/// <summary>The arguments of a question: goals, what must be left alone, and the car to ask it of.</summary>
internal sealed class Goals
{
    private const string Form = "Write it as free(part), off(part), open(joint), state(state) or reach(space), in quotes.";

    private readonly Option<string[]> _without = new("--without")
    {
        Description = "Parts that must be left alone.",
        HelpName = "part",
        AllowMultipleArgumentsPerToken = true,
    };

    public Argument<string[]> Facts { get; } = new("goal")
    {
        Description = "What should become true: 'free(part)', 'off(part)', 'open(joint)', 'reach(space)', 'state(state)'.",
        Arity = ArgumentArity.OneOrMore,
    };

    public CarSource Source { get; } = new();

    public Command AddTo(Command command)
    {
        command.Add(Facts);
        return AddOptionsTo(command);
    }

    public Command AddOptionsTo(Command command)
    {
        command.Add(_without);
        return Source.AddTo(command);
    }

    /// <summary>The answer to the question in the arguments, or its faults.</summary>
    public Reply Ask(Desk desk, ParseResult parsed, Func<Car, Question, Reply> answer) =>
        Ask(desk, parsed, parsed.GetValue(Facts) ?? [], answer);

    /// <summary>The same, the goals given elsewhere.</summary>
    public Reply Ask(Desk desk, ParseResult parsed, IEnumerable<string> goals, Func<Car, Question, Reply> answer) =>
        Source.With(desk, parsed, car => Reply.To(Read(goals), facts =>
        {
            var question = new Question { Goals = facts, Without = (parsed.GetValue(_without) ?? []).ToValueList() };
            var faults = QuestionCheck.Of(car, question);
            return faults.Any(fault => fault.Severity == Severity.Error) ? Reply.Bad(faults) : answer(car, question);
        }));

    /// <summary>All the facts, or a fault for each that is not one.</summary>
    public static Result<ValueList<Fact>> Read(IEnumerable<string> texts)
    {
        var facts = new List<Fact>();
        var faults = new List<Fault>();
        foreach (var text in texts)
        {
            if (Fact.TryParse(text, out var fact))
                facts.Add(fact);
            else
                faults.Add(new(text, "this is not a fact",
                    Identifier.IsValid(text) ? $"Is it 'free({text})' or 'off({text})' that you mean?" : Form));
        }

        return faults.Count > 0 ? Result<ValueList<Fact>>.Bad(faults) : Result<ValueList<Fact>>.Good(facts.Distinct().ToValueList());
    }
}
