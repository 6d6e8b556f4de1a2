using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Solvers;

namespace Refettle.Cli.Tests;

/// <summary>In the demo cars no plan leaves a heavy part without any joint and yet on the car: it would
/// fall. Common practice, no source.</summary>
public sealed class NothingHangsTests(DemoCars cars) : IClassFixture<DemoCars>
{
    private static readonly Kilograms _heavyGoal = new(10);

    private static readonly Kilograms _wouldHurt = new(3);

    private readonly AccessPlanner _planner = new(new ReducedSolver(new MixedIntegerSolver()));

    [Fact]
    public void What_the_estate_plans_leave_unbolted_they_take_off() => Assert.Empty(Hanging(cars.Estate));

    [Fact]
    public void What_the_saloon_plans_leave_unbolted_they_take_off() => Assert.Empty(Hanging(cars.Saloon));

    private string[] Hanging(Structure structure)
    {
        var car = new Car { Id = "car", Name = "Car", Structure = structure, Stance = "on-wheels" };
        return [.. from goal in Goals(structure)
                   let done = _planner.Reach(car, Question.For(goal)).Steps.Select(step => step.Fact).ToHashSet()
                   from part in structure.Parts
                   where !part.Fixed && Weighs(part, _wouldHurt) && IsLoose(structure, part, done) && !IsOff(structure, part, done)
                   select $"{part.Id} hangs after {goal}"];
    }

    private static IEnumerable<Fact> Goals(Structure structure) =>
        [.. structure.Parts.Where(part => !part.Fixed && Weighs(part, _heavyGoal)).Select(part => Fact.Off(part.Id)),
         .. structure.Spaces.Select(space => Fact.Reach(space.Id))];

    private static bool Weighs(Part part, Kilograms least) => part.Mass is { } mass && mass.Value >= least.Value;

    private static bool IsLoose(Structure structure, Part part, HashSet<Fact> done) =>
        structure.Joints.Where(joint => joint.Holds.Contains(part.Id)).All(joint => done.Contains(Fact.Open(joint.Id)));

    private static bool IsOff(Structure structure, Part part, HashSet<Fact> done) => done.Contains(Fact.Off(part.Id))
        || structure.SubAssemblies.Any(unit => unit.Members.Contains(part.Id) && done.Contains(Fact.Off(unit.Id)));
}
