using System.CommandLine;
using Refettle.Cli.Doctor;
using Refettle.Cli.Views;

namespace Refettle.Cli.Verbs;

internal static class DoctorVerb
{
    public static Command Make(Desk desk) =>
        new Command("doctor", "Looks the set-up over: content, planner, store, copies, network; says what is wrong and how to mend it.")
        .Answers(desk, parsed =>
        {
            var conditions = Checkup.Of(desk, parsed.GetValue<string>(GlobalOptions.Store) ?? desk.Around.Store);
            return new(CheckupView.Of(conditions), new { conditions })
            { Code = conditions.Any(one => one.Health == Health.Wrong) ? ExitCode.Faults : ExitCode.Good };
        });
}
