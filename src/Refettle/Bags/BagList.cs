namespace Refettle.Bags;

/// <summary>Which bags matter now.</summary>
public static class BagList
{
    /// <summary>The bags that belong to a step: those of the joint it opens or closes, of the part
    /// it takes off or puts on (with that part's joints), of the members of a sub-assembly, of the state it brings
    /// about. Empty bags are left out.</summary>
    public static ValueList<Bag> Of(Car car, Fact step)
    {
        var things = Things(car.Structure, step).ToHashSet();
        return car.Bags.Where(bag => !bag.IsEmpty && bag.For.Any(things.Contains)).ToValueList();
    }

    /// <summary>Bags that still hold something although all they belong to is together again: something was left out, or the bag was
    /// not marked empty. A bag that belongs to nothing is never left over, only unexplained.</summary>
    public static ValueList<Bag> LeftOver(Car car) => car.Bags
        .Where(bag => !bag.IsEmpty && bag.For.Count > 0 && bag.For.All(thing => IsTogether(car, thing))).ToValueList();

    /// <summary>Bags that hold something and belong to nothing yet.</summary>
    public static ValueList<Bag> Unexplained(Car car) => car.Bags.Where(bag => !bag.IsEmpty && bag.For.Count == 0).ToValueList();

    private static bool IsTogether(Car car, string thing) => thing.Split(' ') is not [var kind, var id] || kind switch
    {
        "joint" => !car.Done.Contains(Fact.Open(id)),
        "part" => !car.Done.Contains(Fact.Off(id))
            && !car.Structure.Joints.Any(joint => joint.Holds.Contains(id) && car.Done.Contains(Fact.Open(joint.Id))),
        "sub-assembly" => !car.Done.Contains(Fact.Off(id)),
        "state" => !car.Done.Contains(Fact.State(id)),
        _ => true,
    };

    private static IEnumerable<string> Things(Structure structure, Fact step)
    {
        if (step.Kind is FactKind.Open)
            return [$"joint {step.Subject}"];
        if (step.Kind is FactKind.State)
            return [$"state {step.Subject}"];
        if (step.Kind is FactKind.Reach)
            return [$"space {step.Subject}"];
        var members = structure.SubAssemblies.FirstOrDefault(unit => unit.Id == step.Subject)?.Members ?? [step.Subject];
        return members.Select(part => $"part {part}").Append($"sub-assembly {step.Subject}")
            .Concat(structure.Joints.Where(joint => joint.Holds.Any(members.Contains)).Select(joint => $"joint {joint.Id}"));
    }
}
