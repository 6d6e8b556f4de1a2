using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Writing;

/// <summary>Writes limits.</summary>
internal static class LimitText
{
    /// <summary>The origin is always written: a limit is worth what its source is.</summary>
    public static void Limits(YamlText text, ValueList<StatedLimit> limits) => text.Below("limits", () =>
    {
        foreach (var limit in limits)
            text.Item(() => Keys(text, limit));
    });

    private static void Keys(YamlText text, StatedLimit limit)
    {
        text.Text("what", limit.What);
        End(text, "least", limit.Lower, limit.Unit);
        End(text, "most", limit.Upper, limit.Unit);
        text.Text("origin", EnumWords<Origin>.Of(limit.Origin));
        text.Text("source", limit.Source);
    }

    /// <summary>A bare number has no unit.</summary>
    private static void End(YamlText text, string key, decimal? value, string unit)
    {
        if (unit.Length == 0)
            text.Number(key, value);
        else
            text.Quantity(key, value, unit);
    }
}
