using Refettle.Cli.Doctor;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The set-up, looked over: a line for each part, what to do below it.</summary>
internal static class CheckupView
{
    public static IRenderable Of(ValueList<CheckupLine> conditions)
    {
        var grid = new Grid().AddColumn(new GridColumn().NoWrap()).AddColumn(new GridColumn().NoWrap()).AddColumn();
        foreach (var condition in conditions)
            grid.AddRow(new Text(Word(condition.Health)), new Text(condition.What), new Text(Told(condition)));
        return grid;
    }

    private static string Told(CheckupLine condition) =>
        condition.Mend.Length == 0 ? condition.Found : $"{condition.Found}\n{condition.Mend}";

    private static string Word(Health health) => health switch
    {
        Health.Good => "good",
        Health.Mind => "mind",
        _ => "WRONG",
    };
}
