using Refettle.Sheets.Reading;

namespace Refettle.Sheets.Writing;

/// <summary>Writes the sections that describe a car.</summary>
internal static class StructureText
{
    public static void Write(YamlText text, Structure structure)
    {
        Each(text, "zones", structure.Zones, zone => zone.Id, ZoneKeys);
        Each(text, "states", structure.States, state => state.Id, StateKeys);
        Each(text, "parts", structure.Parts, part => part.Id, PartText.Keys);
        Each(text, "joints", structure.Joints, joint => joint.Id, JointText.Keys);
        Each(text, "sub-assemblies", structure.SubAssemblies, unit => unit.Id, UnitKeys);
        Each(text, "spaces", structure.Spaces, space => space.Id, SpaceKeys);
        text.Below("loose-ends", () =>
        {
            foreach (var end in structure.LooseEnds)
                text.Item(() => LooseEndKeys(text, end));
        });
    }

    private static void Each<T>(YamlText text, string section, ValueList<T> things, Func<T, string> id, Action<YamlText, T> keys) =>
        text.Below(section, () =>
        {
            foreach (var thing in things)
                text.Thing(id(thing), () => keys(text, thing));
        });

    private static void ZoneKeys(YamlText text, Zone zone)
    {
        text.Text("name", zone.Name);
        text.Number("exposure", zone.Exposure, 1);
        text.Text("posture", zone.Posture, "standing");
        text.List("near", zone.Near);
    }

    private static void StateKeys(YamlText text, State state)
    {
        text.Text("name", state.Name);
        text.Flag("stance", state.IsStance);
        JointText.Ways(text, state.Ways);
        text.List("supports", state.Supports);
        text.List("drains", state.Drains.Select(EnumWords<Hazard>.Of));
        text.Text("kit", state.Kit);
    }

    private static void UnitKeys(YamlText text, SubAssembly unit)
    {
        text.Text("name", unit.Name);
        text.List("members", unit.Members);
        text.List("roles", unit.Roles);
        PartText.Out(text, unit.Out, unit.Prop, Origin.User);
        text.Text("kit", unit.Kit);
    }

    private static void SpaceKeys(YamlText text, Space space)
    {
        text.Text("name", space.Name);
        text.Text("zone", space.Zone, Zone.WholeCar);
        text.List("closed-by", space.ClosedBy);
        text.Text("kit", space.Kit);
        LimitText.Limits(text, space.Limits);
    }

    private static void LooseEndKeys(YamlText text, LooseEnd end)
    {
        text.Text("kit", end.Kit);
        text.Text("hole", end.Hole);
        text.Text("role", end.Role);
        text.Text("side", end.Spot.Code(), "");
        text.Text("prefix", end.Prefix, "");
        text.Flag("optional", end.IsOptional);
        text.Text("meanwhile", end.Meanwhile);
        text.Below("waits", () => Write(text, end.Waits));
        text.Below("mentions", () =>
        {
            foreach (var mention in end.Mentions)
                text.Item(() => MentionKeys(text, mention));
        });
    }

    private static void MentionKeys(YamlText text, Mention mention)
    {
        text.Text("thing", mention.Thing);
        text.Text("list", mention.List);
        text.Text("text", mention.Text);
    }
}
