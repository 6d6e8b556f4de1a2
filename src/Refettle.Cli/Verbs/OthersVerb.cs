using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class OthersVerb
{
    public static Command Make(Desk desk)
    {
        var goals = new Goals();
        var most = new Option<int>("--most") { Description = "At most this many.", DefaultValueFactory = _ => 3 };
        var command = goals.AddTo(new("others", "The next best plans that really differ."));
        command.Add(most);
        return command.Answers(desk, parsed => goals.Ask(desk, parsed, (car, question) =>
        {
            var best = desk.Planner.Reach(car, question, desk.Around.Interrupt);
            if (best.Status == Access.PlanStatus.Impossible)
                return new(PlanView.Of(best), OthersForm.Of(best, [])) { Code = desk.CodeOf(best) };
            var others = desk.Planner.Others(car, question, Math.Max(1, parsed.GetValue(most)), desk.Around.Interrupt);
            return new(PlanQuestionViews.Of(best, others), OthersForm.Of(best, others)) { Code = desk.CodeOf(best) };
        }));
    }
}
