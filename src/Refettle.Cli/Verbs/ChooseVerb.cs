using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class ChooseVerb
{
    public static Command Make(Desk desk)
    {
        var jobs = new Argument<string[]>("job")
        { Description = "The jobs to do; none to choose nothing yet. Musts are done either way.", Arity = ArgumentArity.ZeroOrMore };
        return new Command("choose", "Chooses the jobs to do by hand: timeline, basket and books go by them.") { jobs }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
                desk.Record(open, [new ScopeChosen((parsed.GetValue(jobs) ?? []).Distinct().ToValueList())], now =>
                    new(JobView.Of(now.Car), new { car = now.Car.Id, scope = now.Car.Scope }))));
    }
}
