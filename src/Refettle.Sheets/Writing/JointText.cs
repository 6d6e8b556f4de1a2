using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Writing;

/// <summary>Writes joints and ways.</summary>
internal static class JointText
{
    public static void Keys(YamlText text, Joint joint)
    {
        text.Text("kind", EnumWords<JointKind>.Of(joint.Kind));
        text.Text("name", joint.Name);
        text.List("holds", joint.Holds);
        text.Number("count", joint.Count, 1);
        text.Text("thread", joint.Thread);
        text.Text("grade", joint.Grade);
        text.Quantity("torque", joint.Torque?.Value, "N·m");
        text.Flag("single-use", joint.SingleUse);
        text.Flag("at-ride-height", joint.AtRideHeight);
        text.Number("exposure", joint.Exposure);
        text.Text("kit", joint.Kit);
        text.Text("origin", EnumWords<Origin>.Of(joint.Origin), "user");
        Ways(text, joint.Ways);
        Refit(text, joint.Refit);
        LimitText.Limits(text, joint.Limits);
    }

    public static void Refit(YamlText text, RefitWay? way)
    {
        if (way is null)
            return;
        text.Below("refit", () =>
        {
            text.Text("tool", way.Tool);
            text.Quantity("takes", way.Takes.Value, "min");
            text.List("clear", way.Clear.Select(fact => fact.ToString()));
            text.Text("posture", way.Posture);
            text.List("cautions", way.Cautions);
            text.List("danger", Dangers(way.Danger));
            text.Text("origin", EnumWords<Origin>.Of(way.Origin), "user");
        });
    }

    public static void Ways(YamlText text, ValueList<Way> ways) => text.Below("ways", () =>
    {
        foreach (var way in ways)
            text.Item(() => WayKeys(text, way));
    });

    private static IEnumerable<string> Dangers(Danger? danger) => new[] { Danger.Heat, Danger.Flame, Danger.Spark, Danger.Cutting }
        .Where(one => danger is { } all && all.HasFlag(one)).Select(EnumWords<Danger>.Of);

    private static void WayKeys(YamlText text, Way way)
    {
        text.Text("id", way.Id);
        text.Text("tool", way.Tool);
        text.Quantity("open", way.Open.Value, "min");
        text.Quantity("close", way.Close.Value, "min");
        text.List("clear", way.Clear.Select(fact => fact.ToString()));
        text.Text("where", EnumWords<WorkPlace>.Of(way.Where), "on-car");
        text.Number("odds", way.Odds);
        text.List("destroys", way.Destroys);
        text.Number("spends", way.Spends.Amount, 0);
        text.Text("posture", way.Posture);
        text.List("cautions", way.Cautions);
        text.List("danger", Dangers(way.Danger));
        text.Text("origin", EnumWords<Origin>.Of(way.Origin), "user");
    }
}
