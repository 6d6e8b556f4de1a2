using Refettle.Logbook;

namespace Refettle.CloseUp;

/// <summary>What the log tells about closing up.</summary>
/// <param name="Opened">Joints that were ever opened.</param>
/// <param name="Tightenings">In their order, those after a joint's last opening only.</param>
/// <param name="Heights">Corner → height, the newest of each.</param>
public sealed record ClosingRecord(
    ValueList<string> Opened, ValueList<Tightening> Tightenings, ValueList<(string Corner, Millimetres Height)> Heights)
{
    public static ClosingRecord Of(CarHistory history)
    {
        var tightenings = new List<Tightening>();
        var heights = new Dictionary<string, Millimetres>();
        var stance = history.Car.Structure.States.Any(state => state.IsStance && state.Id == Car.OnWheels) ? Car.OnWheels : null;
        foreach (var happening in history.Lines.Where(line => line.Standing == Standing.InForce).Select(line => line.Happening))
        {
            foreach (var joint in happening is StepDone done ? OpenedBy(history.Car.Structure, done.Fact) : [])
                tightenings.RemoveAll(earlier => earlier.Joint == joint);

            if (happening is StanceTaken taken)
                stance = taken.Stance;
            else if (happening is JointTightened tightened)
                tightenings.Add(new(tightened.Joint, tightened.How, stance, tightened.Torque));
            else if (happening is HeightMeasured measured)
                heights[measured.Corner] = measured.Height;
        }

        return new(history.Car.Disturbed.Where(one => one.Fact.Kind == FactKind.Open).Select(one => one.Fact.Subject).ToValueList(),
            tightenings.ToValueList(),
            heights.OrderBy(height => height.Key, StringComparer.Ordinal).Select(height => (height.Key, height.Value)).ToValueList());
    }

    /// <summary>The joints that were opened since the strip began, those open now among them, in the
    /// order of the car's description.</summary>
    public static IEnumerable<Joint> Disturbed(Car car, IEnumerable<string> opened)
    {
        var disturbed = opened.Concat(car.Done.Where(fact => fact.Kind == FactKind.Open).Select(fact => fact.Subject)).ToHashSet();
        return car.Structure.Joints.Where(joint => disturbed.Contains(joint.Id));
    }

    /// <summary>The joints that a step opens: the one named, those between what came off and what
    /// stayed, all of a part that was freed.</summary>
    internal static IEnumerable<string> OpenedBy(Structure structure, Fact fact)
    {
        string[] Members(string unit) =>
            structure.SubAssemblies.FirstOrDefault(group => group.Id == unit) is { } group ? [.. group.Members] : [unit];
        IEnumerable<string> Between(string[] moved) =>
            structure.Joints.Where(joint => joint.Holds.Any(moved.Contains) && !joint.Holds.All(moved.Contains)).Select(joint => joint.Id);
        return fact.Kind switch
        {
            FactKind.Open => [fact.Subject],
            FactKind.Off => Between(Members(fact.Subject)),
            FactKind.Free => structure.Joints.Where(joint => joint.Holds.Contains(fact.Subject)).Select(joint => joint.Id),
            FactKind.Reach =>
                Between([.. structure.Spaces.Where(space => space.Id == fact.Subject).SelectMany(space => space.ClosedBy)
                    .SelectMany(Members)]),
            _ => [],
        };
    }
}
