using Refettle.Web.Words;

namespace Refettle.Web.Find;

/// <summary>What of a car can be wished for, as things to search.</summary>
public static class Goals
{
    /// <summary>Parts to free, spaces to reach, joints to open; what is so already is left out.</summary>
    public static IEnumerable<Findable> Of(CarLookup car) => Parts(car).Concat(Spaces(car)).Concat(ClosedJoints(car));

    /// <summary>Parts that could be left alone.</summary>
    public static IEnumerable<Findable> PartsOn(CarLookup car) =>
        car.Car.Structure.Parts.Where(part => !part.Fixed && !car.IsOff(part.Id))
            .Select(part => new Findable(part.Id, part.Name, More(car, part)));

    /// <summary>What can be asked to be true before something else.</summary>
    public static IEnumerable<Findable> Conditions(CarLookup car) =>
        car.Car.Structure.States.Select(state => Fact.State(state.Id))
            .Concat(car.Car.Structure.Parts.Where(part => !part.Fixed).Select(part => Fact.Off(part.Id)))
            .Concat(car.Car.Structure.Joints.Select(joint => Fact.Open(joint.Id)))
            .Select(fact => new Findable(fact.ToString(), car.Name(fact), fact.Subject, Rank: fact.Kind == FactKind.Open ? 1 : 0));

    /// <summary>Parts that are on the car, heaviest first: what one mostly wants to get at.</summary>
    public static IEnumerable<Part> Heaviest(CarLookup car, int most) =>
        car.Car.Structure.Parts.Where(part => !part.Fixed && part.Mass is not null && !car.IsOff(part.Id))
            .OrderByDescending(part => part.Mass!.Value.Value).ThenBy(part => part.Name, StringComparer.Ordinal).Take(most);

    /// <summary>Further words that a part is found by.</summary>
    public static string More(CarLookup car, Part part) => $"{part.Id} {car.ZoneName(part.Zone)} {string.Join(' ', part.Roles)}";

    /// <summary>All joints, as <c>joint x</c>.</summary>
    public static IEnumerable<Findable> Joints(CarLookup car) =>
        car.Car.Structure.Joints.Select(joint => new Findable($"joint {joint.Id}", car.JointName(joint), joint.Id));

    /// <summary>All parts that come off, as <c>part x</c>.</summary>
    public static IEnumerable<Findable> PartsOf(CarLookup car) =>
        car.Car.Structure.Parts.Where(part => !part.Fixed)
            .Select(part => new Findable($"part {part.Id}", part.Name, More(car, part), Rank: 1));

    private static IEnumerable<Findable> Parts(CarLookup car) =>
        car.Car.Structure.Parts.Where(part => !part.Fixed && !car.Holds(Fact.Free(part.Id)))
            .Select(part => new Findable(Fact.Free(part.Id).ToString(), part.Name, More(car, part)));

    private static IEnumerable<Findable> Spaces(CarLookup car) =>
        car.Car.Structure.Spaces.Where(space => !car.Holds(Fact.Reach(space.Id)))
            .Select(space => new Findable(Fact.Reach(space.Id).ToString(), space.Name, $"{space.Id} {car.ZoneName(space.Zone)}", Rank: 1));

    private static IEnumerable<Findable> ClosedJoints(CarLookup car) =>
        car.Car.Structure.Joints.Where(joint => !car.Holds(Fact.Open(joint.Id)))
            .Select(joint => new Findable(Fact.Open(joint.Id).ToString(), car.JointName(joint), joint.Id, Rank: 2));
}
