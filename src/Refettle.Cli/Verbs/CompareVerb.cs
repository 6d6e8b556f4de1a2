using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class CompareVerb
{
    public static Command Make(Desk desk)
    {
        var goals = new Goals();
        var with = new Option<string[]>("--with")
        { Description = "The other goals.", HelpName = "goal", Required = true, AllowMultipleArgumentsPerToken = true };
        var command = goals.AddTo(new("compare", "Two sets of goals beside each other, and both in one go."));
        command.Add(with);
        return command.Answers(desk, parsed => goals.Ask(desk, parsed, (car, first) =>
            Reply.To(Goals.Read(parsed.GetValue(with) ?? []), facts => Answer(desk, car, first, first with { Goals = facts }))));
    }

    private static Reply Answer(Desk desk, Car car, Question first, Question second)
    {
        var faults = QuestionCheck.Of(car, second)
            .Concat(QuestionCheck.Of(car, first with { Goals = first.Goals.Concat(second.Goals).Distinct().ToValueList() })).Distinct()
            .ToValueList();
        if (faults.Any(fault => fault.Severity == Severity.Error))
            return Reply.Bad(faults);
        var comparison = desk.Planner.Compare(car, first, second.Goals, desk.Around.Interrupt);
        return new(PlanQuestionViews.Of(comparison), ComparisonForm.Of(comparison)) { Code = desk.CodeOf(comparison.Both) };
    }
}
