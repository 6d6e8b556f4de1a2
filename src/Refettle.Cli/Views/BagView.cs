using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Bags, a line each, or one in full.</summary>
internal static class BagView
{
    public static IRenderable Of(ValueList<Bag> bags, string none)
    {
        if (bags.Count == 0)
            return new Text(none);
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Bag", "Holds", "For", "Lies");
        table.Columns[0].NoWrap();
        foreach (var bag in bags)
            table.AddRow(new Text(BagCode.Shown(bag.Code)), new Text(bag.IsEmpty ? "empty" : string.Join("; ", bag.Holds)),
                new Text(string.Join(", ", bag.For)), new Text(bag.Place ?? ""));
        return table;
    }

    public static IRenderable Of(Bag bag)
    {
        var lines = new List<string>
            { $"Bag {BagCode.Shown(bag.Code)}{(bag.IsEmpty ? ", empty" : "")}{(bag.Place is null ? "" : $", in {bag.Place}")}" };
        lines.AddRange(bag.Holds.Select(held => $"  {held}"));
        if (bag.For.Count > 0)
            lines.Add($"For {string.Join(", ", bag.For)}");
        return new Text(string.Join('\n', lines));
    }
}
