using System.CommandLine;
using Refettle.Access;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class ReachVerb
{
    public static Command Make(Desk desk)
    {
        var goals = new Goals();
        return goals.AddTo(new("reach", "The least work that reaches one or more goals, in an order that works."))
            .Answers(desk,
                parsed => goals.Ask(desk, parsed,
                    (car, question) => Answer(desk, desk.Planner.Reach(car, question, desk.Around.Interrupt))));
    }

    private static Reply Answer(Desk desk, Plan plan) => new(PlanView.Of(plan), PlanForm.Of(plan)) { Code = desk.CodeOf(plan) };
}
