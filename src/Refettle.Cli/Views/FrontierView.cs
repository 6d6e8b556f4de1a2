using Refettle.Scope;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>The greatest gain for one limit after another.</summary>
internal static class FrontierView
{
    private const int WidestBar = 30;

    public static IRenderable Of(Car car, ScopeLimit limit, ValueList<FrontierPoint> points, bool isEnded)
    {
        if (points.Count == 0)
            return new Text(isEnded
                ? "The search was ended before a point was found."
                : "The musts cannot all be done with what there is.");
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("With", "", $"Gain, {car.Currency}", "Worth", "Hours", "Money", "Jobs", "New");
        foreach (var column in table.Columns.Skip(2).Take(5))
            column.RightAligned().NoWrap();
        var (least, most) = (points.Min(point => point.Gain), points.Max(point => point.Gain));
        for (var number = 0; number < points.Count; number++)
        {
            var point = points[number];
            var bar = (int)(most == least ? WidestBar : WidestBar * (point.Gain - least) / (most - least));
            table.AddRow(
                new Text(Limit(limit, point.Limit)), new Text(new('█', bar)), new Text($"{point.Gain:0}"), new Text($"{point.Sum.Worth:0}"),
                new Text($"{point.Sum.Time.Value / 60:0.0}"), new Text($"{point.Sum.Money.Amount:0}"), new Text($"{point.Jobs.Count}"),
                new Text(New(points, number)));
        }

        return new Rows(table,
            new Text($"Every point is proven: no choice gains more within it.{(isEnded ? " The search was ended early." : "")}"));
    }

    public static string Limit(ScopeLimit limit, decimal value) => limit == ScopeLimit.Time ? $"{value / 60:0.0} h" : $"{value:0}";

    private static string New(ValueList<FrontierPoint> points, int number)
    {
        var before = number == 0 ? [] : points[number - 1].Jobs;
        var more = points[number].Jobs.Except(before).Select(job => $"+{job}");
        return number == 0 ? "" : string.Join(" ", more.Concat(before.Except(points[number].Jobs).Select(job => $"−{job}")));
    }
}
