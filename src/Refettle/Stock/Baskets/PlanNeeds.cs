using Refettle.Access;

namespace Refettle.Stock.Baskets;

/// <summary>What a plan of a car uses up.</summary>
public static class PlanNeeds
{
    /// <param name="plan">The plan; what is open or off already is taken along.</param>
    /// <param name="parts">Further parts that are to be renewed, by identifier: verdicts, jobs.</param>
    /// <param name="by">The day by which it must be in hand.</param>
    /// <returns>Each place once.</returns>
    public static ValueList<Need> Of(Car car, Shelf shelf, Plan plan, IEnumerable<string> parts, DateOnly? by)
    {
        var positions = car.Numbers.ToDictionary(number => number.Thing);
        var opened = plan.Steps.Select(step => step.Fact).Concat(car.Done).Where(fact => fact.Kind == FactKind.Open).Select(fact => fact.Subject).ToHashSet();
        var destroyed = plan.Steps.SelectMany(step => step.Destroys).ToHashSet();
        var asked = parts.ToHashSet();
        var renewed = destroyed.Union(asked).ToHashSet();
        var needs = car.Structure.Parts.Where(part => destroyed.Contains(part.Id) || asked.Contains(part.Id)).Select(part => OfPart(car, part, positions, destroyed.Contains(part.Id), by))
            .Concat(car.Structure.Joints.Where(joint => opened.Contains(joint.Id) && !GoesWith(joint, renewed)).Select(joint => OfJoint(car, shelf, joint, positions, by)).OfType<Need>());
        return needs.OrderBy(need => need.Thing, StringComparer.Ordinal).ToValueList();
    }

    private static Need OfPart(Car car, Part part, Dictionary<string, PositionNumber> positions, bool destroyed, DateOnly? by)
    {
        var position = positions.GetValueOrDefault($"part {part.Id}");
        return new(car.Id, $"part {part.Id}", position?.Number, part.Name, position?.Count ?? part.Count, by, destroyed ? NeedReason.Destroyed : NeedReason.Asked, part.Price,
            destroyed ? "the plan destroys it" : "to be renewed");
    }

    /// <summary>A gasket's own seat and bond are no pieces beside the gasket that is renewed.</summary>
    private static bool GoesWith(Joint joint, HashSet<string> renewed) =>
        joint.Kind is JointKind.Seal or JointKind.Bond or JointKind.Seat or JointKind.PressFit && joint.Holds.Any(renewed.Contains);

    private static Need? OfJoint(Car car, Shelf shelf, Joint joint, Dictionary<string, PositionNumber> positions, DateOnly? by)
    {
        var position = positions.GetValueOrDefault($"joint {joint.Id}");
        var pieces = position?.Count ?? joint.Count;
        var need = new Need(car.Id, $"joint {joint.Id}", position?.Number, Name(joint), pieces, by, NeedReason.SingleUse, null, "single-use: new ones each time");
        if (joint.SingleUse)
            return need;
        if (joint.Kind == JointKind.Seal)
            return need with { Reason = NeedReason.Seal, Says = "a seal is not fitted twice (common practice, no source)" };
        var spares = Spares.For(shelf, joint, position?.Number, pieces, car.Settings);
        return spares.Count == 0 ? null : need with { Count = spares.Count, Reason = NeedReason.MayBreak, Says = spares.Says };
    }

    private static string Name(Joint joint) => string.Join(' ', new[]
    {
        joint.Name ?? Words(joint.Kind), joint.Thread, joint.Grade is null ? null : $"class {joint.Grade}",
    }.Where(word => word is not null));

    private static string Words(JointKind kind) => kind == JointKind.PressFit ? "press fit" : kind.ToString().ToLowerInvariant();
}
