using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class WhyVerb
{
    public static Command Make(Desk desk)
    {
        var step = new Argument<string>("fact") { Description = "The step, as a fact: 'off(part)', 'open(joint)' …" };
        var wanted = new Option<string[]>("--for")
        { Description = "The goals of the plan.", HelpName = "goal", Required = true, AllowMultipleArgumentsPerToken = true };
        var goals = new Goals();
        var command = goals.AddOptionsTo(new("why", "Why a step is in the plan for these goals.") { step, wanted });
        return command.Answers(desk, parsed => Reply.To(Goals.Read([parsed.GetRequiredValue(step)]), facts =>
            goals.Ask(desk, parsed, parsed.GetValue(wanted) ?? [], (car, question) => Answer(desk, car, question, facts[0]))));
    }

    private static Reply Answer(Desk desk, Car car, Question question, Fact fact)
    {
        if (Unknown.Subject(car.Structure, fact) is { } fault)
            return Reply.Bad([fault]);
        var plan = desk.Planner.Reach(car, question, desk.Around.Interrupt);
        var answer = Why.Of(plan, fact) ?? new(fact, [], []);
        return new(PlanQuestionViews.Of(answer), answer) { Code = desk.CodeOf(plan) };
    }
}
