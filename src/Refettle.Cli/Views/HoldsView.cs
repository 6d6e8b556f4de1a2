using Refettle.Access;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>What still holds a part.</summary>
internal static class HoldsView
{
    public static IRenderable Of(HoldsAnswer answer)
    {
        var lines = new List<IRenderable> { new Text(Says(answer)) };
        if (answer.Joints.Count > 0)
            lines.Add(Joints(answer));
        if (answer.InTheWay.Count > 0)
            lines.Add(new Text($"In the way out: {Wording.Facts(answer.InTheWay)}"));
        if (answer.Prop is not null)
            lines.Add(new Markup($"[bold]Hold up before the last joint opens:[/] {answer.Prop.Safe()}"));
        return new Rows(lines);
    }

    private static string Says(HoldsAnswer answer) => (answer.IsOff, answer.Joints.Count) switch
    {
        (true, 0) => $"{answer.Part} is off the car, and nothing is joined to it.",
        (true, var joints) => $"{answer.Part} is off the car; {Wording.Count(joints, "joint")} of it still closed:",
        (false, 0) => $"Nothing holds {answer.Part} any more.",
        (false, var joints) => $"{answer.Part} is held by {Wording.Count(joints, "joint")}:",
    };

    private static Table Joints(HoldsAnswer answer)
    {
        var table = new Table { Border = TableBorder.None };
        foreach (var heading in new[] { "Joint", "What", "Holds it to", "Tool", "Open", "First" })
            table.AddColumn(heading);
        table.Columns[4].RightAligned().NoWrap();
        foreach (var hold in answer.Joints)
            table.AddRow(new Text(hold.Joint), new Text(hold.Says), new Text(string.Join(", ", hold.To)),
                new Text(hold.Tool ?? "no way that works"), new Text($"{hold.Open}"), new Text(Wording.Facts(hold.Before)));
        return table;
    }
}
