namespace Refettle.CloseUp;

/// <summary>What is still to be done inside a space before it is closed.</summary>
public static class LastLook
{
    /// <summary>Joints still open and parts still off that can only be closed or fitted while the space is open.
    /// Empty when the space may be closed.</summary>
    /// <returns>A fault when the car has no such space.</returns>
    public static Result<ValueList<Fact>> Of(Car car, string space)
    {
        if (car.Structure.Spaces.FirstOrDefault(known => known.Id == space) is not { } closing)
            return Result<ValueList<Fact>>.Bad(new Fault($"space {space}", "the car has no such space",
                NearNames.Ask(space, car.Structure.Spaces.Select(known => known.Id), "Look at the list of the car's spaces.")));
        return Result<ValueList<Fact>>.Good(Inside(car, closing).Where(car.Done.Contains).ToValueList());
    }

    /// <summary>Joints still open that can be closed later too, but hold a part that lies in there: best
    /// looked at while it can be seen.</summary>
    public static ValueList<Fact> Beside(Car car, string space)
    {
        if (car.Structure.Spaces.FirstOrDefault(known => known.Id == space) is not { } closing)
            return [];
        var behind = Behind.Of(car.Structure, closing);
        return car.Structure.Joints
            .Where(joint => joint.Holds.Any(part => behind.Contains(Fact.Off(part)))
                && !joint.Holds.Any(part => car.Done.Contains(Fact.Off(part))))
            .Select(joint => Fact.Open(joint.Id)).Where(open => !behind.Contains(open) && car.Done.Contains(open)).ToValueList();
    }

    /// <summary>What can only be closed or fitted while a space is open.</summary>
    internal static IEnumerable<Fact> Inside(Car car, Space space)
    {
        var behind = Behind.Of(car.Structure, space);
        var facts = car.Structure.Joints.Select(joint => Fact.Open(joint.Id))
            .Concat(car.Structure.Parts.Where(part => !space.ClosedBy.Contains(part.Id)).Select(part => Fact.Off(part.Id)));
        return facts.Where(behind.Contains);
    }
}
