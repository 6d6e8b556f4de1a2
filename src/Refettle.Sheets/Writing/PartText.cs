using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Writing;

/// <summary>Writes parts and ways out.</summary>
internal static class PartText
{
    public static void Keys(YamlText text, Part part)
    {
        text.Text("name", part.Name);
        text.Text("zone", part.Zone, Zone.WholeCar);
        text.Text("side", EnumWords<Side>.Of(part.Side), "none");
        text.Number("count", part.Count, 1);
        text.Text("scarcity", EnumWords<Scarcity>.Of(part.Scarcity), "stocked");
        text.Quantity("mass", part.Mass?.Value, "kg");
        text.Number("price", part.Price?.Amount);
        text.List("hazards", part.Hazards.Select(EnumWords<Hazard>.Of));
        text.List("duties", part.Duties.Select(EnumWords<Duty>.Of));
        text.List("roles", part.Roles);
        text.Flag("fixed", part.Fixed);
        text.Text("kit", part.Kit);
        Out(text, part.Out, part.Prop, part.Origin);
        LimitText.Limits(text, part.Limits);
        text.Text("origin", EnumWords<Origin>.Of(part.Origin), "user");
    }

    /// <param name="given">The origin that minutes have when none is written.</param>
    public static void Out(YamlText text, WayOut way, string? prop, Origin given) => text.Below("out", () =>
    {
        var assumed = way.Off > Minutes.Zero || way.On > Minutes.Zero ? given : Origin.Default;
        text.Quantity("off", way.Off.Value, "min", 0);
        text.Quantity("on", way.On.Value, "min", 0);
        text.List("clear", way.Clear.Select(fact => fact.ToString()));
        text.Text("tool", way.Tool);
        text.Text("prop", prop);
        JointText.Refit(text, way.Refit);
        text.List("cautions", way.Cautions);
        text.Text("origin", EnumWords<Origin>.Of(way.Origin), EnumWords<Origin>.Of(assumed));
    });
}
