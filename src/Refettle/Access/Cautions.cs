using Refettle.Access.Derivation;
using Refettle.Access.Fire;

namespace Refettle.Access;

/// <summary>The cautions that stand at a step: the way's own, the usual ones of hazards, the standing warning of unique parts.</summary>
/// <remarks>Texts are common practice; the vehicle maker's manual, local codes and licensed practice come first.</remarks>
internal static class Cautions
{
    /// <param name="way">What is done.</param>
    /// <param name="standing">The car before the plan.</param>
    /// <param name="gone">Parts that are off by then.</param>
    /// <param name="further">What it sets alight beside what the way itself says.</param>
    public static ValueList<string> Of(WaySource way, CarStanding standing, IReadOnlySet<string>? gone = null, Danger further = Danger.None)
    {
        gone ??= new HashSet<string>();
        var parts = Touched(way, standing).ToArray();
        var own = way.Way?.Cautions ?? Ordering.Workplace.OutOf(way, standing)?.Cautions ?? [];
        var hazards = way.Fact.Kind is FactKind.Off or FactKind.Open
            ? parts.SelectMany(part => part.Hazards).Distinct().Order().Select(Caution).OfType<string>()
            : [];
        var unique = parts.Where(part => part.Scarcity == Scarcity.Unique)
            .Select(part => $"{part.Name} is unique: there is no other. Stop rather than force it.");
        return own.Concat(hazards).Concat(Working(way, standing)).Concat(Hot(way, standing, gone, further)).Concat(unique)
            .Concat(Passed(way, parts, standing, gone)).Concat(Beside(way, parts, standing, gone)).Distinct().ToValueList();
    }

    /// <summary>Under a car that stands on what was found too weak. No stance is taken that rests on that, but the car may stand so
    /// already.</summary>
    /// <param name="taken">The stance that the car is in by then; null when it is not known.</param>
    public static IEnumerable<string> Weak(CarStanding standing, string? taken, string? posture) =>
        posture == Ordering.Workplace.Under && taken is not null && standing.States.GetValueOrDefault(taken) is { } stance
            ? standing.Carriers(stance).Where(standing.Car.Unsound.Contains).Select(part =>
                $"Not under it: {standing.Parts[part].Name} was found too weak to carry the car, and the car stands on it now ({stance.Name}).")
            : [];

    /// <summary>Of posture, tool, and states that are brought about.</summary>
    private static IEnumerable<string> Working(WaySource way, CarStanding standing)
    {
        if (Ordering.Workplace.Posture(way, Ordering.Workplace.Zone(way, standing), standing) == Ordering.Workplace.Under)
            yield return UsualCautions.Under;
        foreach (var caution in UsualCautions.OfTool(Ordering.Workplace.Tool(way, standing)))
            yield return caution;
        foreach (var caution in way.Fact.Kind == FactKind.State ? UsualCautions.OfState(standing.States[way.Fact.Subject]) : [])
            yield return caution;
    }

    private static IEnumerable<string> Hot(WaySource way, CarStanding standing, IReadOnlySet<string> gone, Danger further)
    {
        var danger = HotWork.Of(way, standing) | further;
        if (danger == Danger.None)
            return [];
        var joint = way.Fact.Kind == FactKind.Open ? standing.Joints[way.Fact.Subject] : null;
        var soft = way.Way?.Where == WorkPlace.OnBench
            ? []
            : SoftParts.Near(standing, FireNeeds.HeldBy(way.Fact, standing)).Where(part => !gone.Contains(part.Id))
                .Select(part => part.Name).ToList();
        var lost = way.Way?.Destroys.Select(part => standing.Parts[part].Name).ToList() ?? [];
        return
        [
            .. UsualCautions.OfDanger(danger, joint),
            .. soft.Count == 0 ? [] : new[] { $"Shield, or take off first: {string.Join(", ", soft)}. Rubber and plastic burn and melt." },
            .. lost.Count == 0 || (danger & Danger.Fire) == 0 || HasLeave(way, standing)
                ? []
                : new[] { $"In hand before it, as it is destroyed: {string.Join(", ", lost)}." },
        ];
    }

    private static bool HasLeave(WaySource way, CarStanding standing) =>
        standing.Car.LeaveForMissing
            .Any(leave => leave.Joint == way.Fact.Subject && leave.Rung == way.Name && way.Fact.Kind == FactKind.Open);

    /// <summary>What is lifted out passes the unique parts that stay and that it is joined to.</summary>
    private static IEnumerable<string> Passed(WaySource way, Part[] touched, CarStanding standing, IReadOnlySet<string> gone) =>
        way.Fact.Kind != FactKind.Off ? []
        : UniquesJoined(touched, standing, gone).Select(part => $"Passes {part.Name}, which is unique: there is no other. Guide it clear.");

    /// <summary>Tools work beside the unique parts in the same zone that are joined to what the joint
    /// holds; a line for all of them.</summary>
    private static IEnumerable<string> Beside(WaySource way, Part[] touched, CarStanding standing, IReadOnlySet<string> gone)
    {
        if (way.Fact.Kind != FactKind.Open || way.Way?.Where == WorkPlace.OnBench)
            return [];
        var zone = Ordering.Workplace.Zone(way, standing);
        var held = touched.Where(part => !part.Fixed && !gone.Contains(part.Id) && !standing.IsTrue(Fact.Off(part.Id)));
        var names = UniquesJoined(held, standing, gone).Except(touched)
            .Where(part => zone == Zone.WholeCar || part.Zone == Zone.WholeCar || part.Zone == zone).Select(part => part.Name).ToList();
        return names.Count == 0 ? []
            : [$"Beside {string.Join(" and ", names)}, which {(names.Count == 1 ? "is" : "are")} unique: there is no other. Cover it or keep clear."];
    }

    /// <summary>Unique parts on the car that these are joined to; a body shell is joined to everything and does not count.</summary>
    private static IEnumerable<Part> UniquesJoined(IEnumerable<Part> parts, CarStanding standing, IReadOnlySet<string> gone)
    {
        var from = parts.ToList();
        return from.SelectMany(part => standing.JointsOf(part.Id)).SelectMany(joint => joint.Holds).Distinct()
            .Select(name => standing.Parts[name])
            .Where(part => part.Scarcity == Scarcity.Unique && !part.Fixed && !from.Contains(part) && !gone.Contains(part.Id)
                && !standing.IsTrue(Fact.Off(part.Id)));
    }

    /// <summary>The usual caution of a hazard; null where the material alone asks for none at this step.</summary>
    public static string? Caution(Hazard hazard) => hazard switch
    {
        Hazard.Fuel =>
            "Fuel: no flame, spark or hot lamp; drain and catch outdoors, never over a pit; extinguisher at hand. The maker's manual comes first.",
        Hazard.BrakeFluid =>
            "Brake fluid harms skin and paint: catch it, rinse with water. Blank open pipes; bleed what was opened as the maker says.",
        Hazard.Airbag =>
            "Airbag: battery off and the maker's waiting time over before a connector is touched (makers ask from 10 seconds to 20 minutes: without his figure wait the longest); carry it facing away, store it facing up. Licensed work in some places.",
        Hazard.SpringLoad =>
            "Spring under load: rated compressor or support, never an impact tool on it, stay out of its line. The maker's manual comes first.",
        Hazard.Refrigerant => "Refrigerant: recovered by a licensed shop before a line is opened.",
        Hazard.HotCoolant => "Coolant: cold engine only; catch it, it poisons animals.",
        Hazard.FrictionDust =>
            "Friction dust may hold asbestos: wet method or extraction with a fine filter, never dry brushing or compressed air.",
        Hazard.BatteryAcid => "Battery: acid and hydrogen; earth lead off first and on last, no sparks, keep it upright.",
        Hazard.Oil => "Oil: catch it, gloves, wipe the floor at once; blank what stays open.",
        Hazard.Mercury => "Mercury: take the switch off whole. Broken: everyone out, fresh air, never a vacuum cleaner.",
        Hazard.Asbestos => "May hold asbestos: wet, tight mask for fine dust (P3), never dry brushing, a grinder or compressed air.",
        _ => null,
    };

    private static IEnumerable<Part> Touched(WaySource way, CarStanding standing)
    {
        IEnumerable<string> names = way.Fact.Kind switch
        {
            FactKind.Open => standing.Joints[way.Fact.Subject].Holds,
            FactKind.Off when standing.SubAssemblies.TryGetValue(way.Fact.Subject, out var unit) => unit.Members,
            FactKind.Off or FactKind.Free => [way.Fact.Subject],
            FactKind.Reach => standing.Spaces[way.Fact.Subject].ClosedBy,
            _ => [],
        };
        return names.Concat(way.Way?.Destroys ?? []).Distinct().Select(name => standing.Parts[name]);
    }
}
