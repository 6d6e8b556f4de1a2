using System.CommandLine;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class WithinVerb
{
    public static Command Make(Desk desk)
    {
        var goals = new Goals();
        var most = new Option<int>("--most") { Description = "At most this many.", DefaultValueFactory = _ => 20 };
        var command = goals.AddTo(new("within", "What else comes within reach once the goals are reached, and what it costs on top."));
        command.Add(most);
        return command.Answers(desk, parsed => goals.Ask(desk, parsed, (car, question) =>
        {
            var answer = desk.Planner.Within(car, question, Math.Max(1, parsed.GetValue(most)), desk.Around.Interrupt);
            return new(PlanQuestionViews.Of(answer), WithinForm.Of(answer)) { Code = desk.CodeOf(answer.Plan) };
        }));
    }
}
