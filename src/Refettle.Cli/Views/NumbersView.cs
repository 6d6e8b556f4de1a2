using Refettle.Bench;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Bench numbers: the list, what one takes, and an answer.</summary>
internal static class NumbersView
{
    public static IRenderable List(IEnumerable<BenchNumber> numbers)
    {
        var table = Plain("Number", "Room", "What");
        foreach (var number in numbers)
            table.AddRow(new Text(number.Name), new Text(number.Room), new Text(number.Says));
        return table;
    }

    public static IRenderable Of(BenchNumber number)
    {
        var inputs = Plain("Input", "What", "Accepts");
        foreach (var input in number.Inputs)
            inputs.AddRow(new Text(input.Name), new Text(input.Says), new Text(input.Accepts + When(input)));
        return new Rows(
            new Markup($"[bold]{number.Says.Safe()}[/]"), inputs,
            Facts(("Formula", number.Formula), ("Source", number.Source), ("How sure", number.Uncertainty),
                ("Try", $"refettle numbers {number.Name} {number.Example}")),
            new Text(BenchAnswer.MakerFirst));
    }

    public static IRenderable Of(BenchAnswer answer)
    {
        var lines = new List<IRenderable> { new Text(answer.Says + Verdict(answer)) };
        lines.AddRange(answer.Values.Select(value => new Markup($"  [bold]{value.ToString().Safe()}[/]")));
        lines.AddRange(answer.Cautions.Select(caution => new Markup($"[bold]Caution:[/] {caution.Safe()}")));
        var assumed = answer.Inputs.Where(input => input.Origin is not null)
            .Select(input => ($"{input.Name} assumed", $"{input.Text}: {input.Origin}"));
        lines.Add(Facts([("Formula", answer.Formula), ("Source", answer.Source), ("How sure", answer.Uncertainty), .. assumed]));
        lines.Add(new Text(answer.Note));
        return new Rows(lines);
    }

    private static string Verdict(BenchAnswer answer) => answer.Verdict is { } verdict ? $": {verdict}" : "";

    private static string When(Input input) =>
        input.Default is { } text ? $"; else {text} ({input.DefaultOrigin})" : input.IsOptional ? "; may be left out" : "";

    private static Grid Facts(params (string Name, string Text)[] facts)
    {
        var grid = new Grid().AddColumn(new GridColumn().NoWrap()).AddColumn();
        foreach (var (name, text) in facts)
            grid.AddRow(new Text(name), new Text(text));
        return grid;
    }

    private static Table Plain(params string[] headings)
    {
        var table = new Table { Border = TableBorder.None };
        table.AddColumns(headings);
        table.Columns[0].NoWrap();
        return table;
    }
}
