namespace Refettle.CloseUp;

/// <summary>What is still to be done inside a space before it is closed.</summary>
public static class LastLook
{
    /// <summary>Joints still open and parts still off that can only be closed or fitted while the space is open. Empty when the space may be closed.</summary>
    /// <returns>A fault when the car has no such space.</returns>
    public static Result<ValueList<Fact>> Of(Car car, string space)
    {
        if (car.Structure.Spaces.FirstOrDefault(known => known.Id == space) is not { } closing)
            return Result<ValueList<Fact>>.Bad(new Fault($"space {space}", "the car has no such space", NearNames.Ask(space, car.Structure.Spaces.Select(known => known.Id), "Look at the list of the car's spaces.")));
        return Result<ValueList<Fact>>.Good(Inside(car, closing).Where(car.Done.Contains).ToValueList());
    }

    /// <summary>What can only be closed or fitted while a space is open.</summary>
    internal static IEnumerable<Fact> Inside(Car car, Space space)
    {
        var needed = Fact.Reach(space.Id);
        var joints = car.Structure.Joints.Where(joint => joint.Ways.All(way => way.Clear.Contains(needed))).Select(joint => Fact.Open(joint.Id));
        var parts = car.Structure.Parts.Where(part => part.Out.Clear.Contains(needed) && !space.ClosedBy.Contains(part.Id)).Select(part => Fact.Off(part.Id));
        return joints.Concat(parts);
    }
}
