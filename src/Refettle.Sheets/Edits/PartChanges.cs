using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Edits;

/// <summary>The keys of parts and sub-assemblies, the way out among them.</summary>
internal static class PartChanges
{
    /// <summary>Keys that stand below <c>out</c> in a sheet.</summary>
    public static readonly string[] OutKeys = ["off", "on", "clear", "tool", "prop", "cautions", RefitKeys.Name];

    public static readonly ChangeTable<Part> OfPart = RefitChanges.With<Part>(new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["zone"] = (old, given, _) => old with { Zone = given.Zone },
            ["side"] = (old, given, _) => old with { Side = given.Side },
            ["count"] = (old, given, _) => old with { Count = given.Count },
            ["scarcity"] = (old, given, _) => old with { Scarcity = given.Scarcity },
            ["mass"] = (old, given, _) => old with { Mass = given.Mass, Origin = given.Origin },
            ["price"] = (old, given, _) => old with { Price = given.Price, Origin = given.Origin },
            ["hazards"] = (old, given, adds) => old with { Hazards = Lists.Of(old.Hazards, given.Hazards, adds) },
            ["duties"] = (old, given, adds) => old with { Duties = Lists.Of(old.Duties, given.Duties, adds) },
            ["roles"] = (old, given, adds) => old with { Roles = Lists.Of(old.Roles, given.Roles, adds) },
            ["fixed"] = (old, given, _) => old with { Fixed = given.Fixed },
            ["origin"] = (old, given, _) => old with { Origin = given.Origin },
            ["off"] = (old, given, _) => old with { Out = old.Out with { Off = given.Out.Off, Origin = given.Out.Origin } },
            ["on"] = (old, given, _) => old with { Out = old.Out with { On = given.Out.On, Origin = given.Out.Origin } },
            ["clear"] = (old, given, adds) => old with { Out = old.Out with { Clear = Lists.Of(old.Out.Clear, given.Out.Clear, adds) } },
            ["tool"] = (old, given, _) => old with { Out = old.Out with { Tool = given.Out.Tool } },
            ["prop"] = (old, given, _) => old with { Prop = given.Prop },
            ["cautions"] = (old, given, adds) => old with
            { Out = old.Out with { Cautions = Lists.Of(old.Out.Cautions, given.Out.Cautions, adds) } },
        },
        ["hazards", "duties", "roles", "clear", "cautions"]), part => part.Out.Refit,
        (part, way) => part with { Out = part.Out with { Refit = way } });

    public static readonly ChangeTable<SubAssembly> OfUnit = RefitChanges.With<SubAssembly>(new(
        new()
        {
            ["name"] = (old, given, _) => old with { Name = given.Name },
            ["members"] = (old, given, adds) => old with { Members = Lists.Of(old.Members, given.Members, adds) },
            ["off"] = (old, given, _) => old with { Out = old.Out with { Off = given.Out.Off, Origin = given.Out.Origin } },
            ["on"] = (old, given, _) => old with { Out = old.Out with { On = given.Out.On, Origin = given.Out.Origin } },
            ["clear"] = (old, given, adds) => old with { Out = old.Out with { Clear = Lists.Of(old.Out.Clear, given.Out.Clear, adds) } },
            ["tool"] = (old, given, _) => old with { Out = old.Out with { Tool = given.Out.Tool } },
            ["prop"] = (old, given, _) => old with { Prop = given.Prop },
            ["cautions"] = (old, given, adds) => old with
            { Out = old.Out with { Cautions = Lists.Of(old.Out.Cautions, given.Out.Cautions, adds) } },
        },
        ["members", "clear", "cautions"]), unit => unit.Out.Refit, (unit, way) => unit with { Out = unit.Out with { Refit = way } });
}
