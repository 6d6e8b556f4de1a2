using Refettle.Access.Derivation;

namespace Refettle.Access;

/// <summary>What must be held up before the last joint of something heavy opens.</summary>
internal static class Propping
{
    /// <param name="way">The step about to be done.</param>
    /// <param name="standing">The car before the plan.</param>
    /// <param name="opened">Joints that earlier steps of the plan opened.</param>
    /// <param name="toLift">Sub-assemblies that the plan still lifts out as such.</param>
    /// <param name="spared">Parts that have left the car, or leave it with a sub-assembly.</param>
    /// <param name="gone">Parts that are off by then.</param>
    /// <returns>What to prop and where, or null.</returns>
    public static string? Of(
        WaySource way, CarStanding standing, HashSet<string> opened, HashSet<string> toLift, HashSet<string> spared, HashSet<string> gone)
    {
        if (way.Fact.Kind != FactKind.Open || way.Way?.Where == WorkPlace.OnBench)
            return null;
        var joint = standing.Joints[way.Fact.Subject];
        var units = joint.Holds.SelectMany(standing.SubAssembliesOf).Distinct()
            .Where(unit => toLift.Contains(unit.Id) && IsLast(joint, standing.OuterJointsOf(unit))
                && IsHeavy(Mass(unit.Members, standing), unit.Prop))
            .Select(unit => Words(unit.Name, Mass(unit.Members, standing), unit.Prop));
        var parts = joint.Holds.Select(name => standing.Parts[name])
            .Where(part => !part.Fixed && !spared.Contains(part.Id) && IsLast(joint, standing.JointsOf(part.Id))
                && IsHeavy(part.Mass?.Value ?? 0, part.Prop))
            .Select(part => Words(part.Name, part.Mass?.Value ?? 0, part.Prop));
        return units.Concat(parts).FirstOrDefault() ?? Together(Hanging.On(joint, standing, opened, gone));

        string? Together(ValueList<Part> falling) =>
            !falling.Any(part => IsHeavy(0, part.Prop)) && !IsHeavy(falling.Sum(part => part.Mass?.Value ?? 0), null) ? null
            : Words(Some(falling), falling.Sum(part => part.Mass?.Value ?? 0),
                string.Join("; ", falling.Select(part => part.Prop).OfType<string>()) is { Length: > 0 } props ? props : null);

        bool IsLast(Joint last, IEnumerable<Joint> joints)
        {
            var holding = joints.Where(other => !standing.IsTrue(Fact.Open(other.Id))).ToList();
            var carrying = holding.Where(Hanging.Carries).ToList();
            return (carrying.Count > 0 ? carrying : holding) is var those && those.Exists(other => other.Id == last.Id)
                && those.TrueForAll(other => other.Id == last.Id || opened.Contains(other.Id));
        }

        bool IsHeavy(decimal kilograms, string? prop) => prop is not null || kilograms >= standing.Car.Settings.PropFrom.Value;
    }

    private static string Some(ValueList<Part> parts) =>
        $"{string.Join(", ", parts.Take(3).Select(part => part.Name))}{(parts.Count > 3 ? $" and {parts.Count - 3} more" : "")}";

    private static decimal Mass(ValueList<string> parts, CarStanding standing) =>
        parts.Sum(name => standing.Parts[name].Mass?.Value ?? 0);

    private static string Words(string name, decimal kilograms, string? prop)
    {
        var mass = kilograms > 0 ? $" ({new Kilograms(kilograms)})" : "";
        return $"Hold up: {name}{mass}{(prop is null ? "" : ", " + prop)}";
    }
}
