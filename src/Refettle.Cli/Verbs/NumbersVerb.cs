using System.CommandLine;
using Refettle.Bench;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class NumbersVerb
{
    public static Command Make(Desk desk)
    {
        var name = new Argument<string?>("number")
        { Description = "The number; without it, all are listed.", Arity = ArgumentArity.ZeroOrOne };
        var pairs = new Argument<string[]>("key=value")
        { Description = "Its inputs, such as torque=48Nm; without them, what it takes is shown.", Arity = ArgumentArity.ZeroOrMore };
        var units = new Option<string[]>("--in") { Description = "A unit for the answer, such as lbf·ft." };
        return new Command("numbers", "Works out a bench number: torque, film, dew point, toe …") { name, pairs, units }
            .Answers(desk, parsed => Answer(parsed.GetValue(name), Joined(parsed.GetValue(pairs) ?? []), parsed.GetValue(units) ?? []));
    }

    private static Reply Answer(string? name, ValueList<string> pairs, string[] units)
    {
        if (name is null)
            return new(NumbersView.List(BenchNumbers.All), new { numbers = BenchNumbers.All.Select(Form).ToValueList() });
        if (pairs.Count == 0 && BenchNumbers.Find(name) is { } number)
            return new(NumbersView.Of(number), Form(number));
        return Reply.To(BenchNumbers.Answer(name, pairs),
            answer => Reply.To(In(answer, units), turned => new(NumbersView.Of(turned), turned)));
    }

    /// <summary>A word without = belongs to the value before it: <c>torque=48 N·m</c>.</summary>
    private static ValueList<string> Joined(string[] words) =>
        words.Aggregate(new List<string>(), (pairs, word) =>
        {
            if (pairs.Count > 0 && !word.Contains('='))
                pairs[^1] += " " + word;
            else
                pairs.Add(word);
            return pairs;
        }).ToValueList();

    private static Result<BenchAnswer> In(BenchAnswer answer, string[] units)
    {
        foreach (var word in units)
        {
            var unit = answer.Values.Select(value => Units.Find(value.Unit.Dimension, word)).FirstOrDefault(found => found is not null);
            if (unit is null)
                return Result<BenchAnswer>.Bad(new Fault("--in", $"nothing in this answer is measured in '{word}'",
                    "Give one of: "
                        + string.Join(", ",
                            answer.Values.Select(value => value.Unit.Dimension).Distinct().Select(Units.Of)
                                .Where(list => list.Length > 0))));
            answer = answer.In(unit);
        }

        return Result<BenchAnswer>.Good(answer);
    }

    private static object Form(BenchNumber number) => new
    {
        name = number.Name,
        says = number.Says,
        room = number.Room,
        formula = number.Formula,
        source = number.Source,
        uncertainty = number.Uncertainty,
        inputs = number.Inputs.Select(input => new
        {
            name = input.Name,
            says = input.Says,
            accepts = input.Accepts,
            required = input.IsRequired,
            @default = input.Default,
            defaultOrigin = input.DefaultOrigin,
        }).ToValueList(),
        example = number.Example,
        note = BenchAnswer.MakerFirst,
    };
}
