using Refettle.Access;
using Refettle.Peers.Cars;

namespace Refettle.Solvers.Tests.Peers;

/// <summary>That generated cars are what the benchmarks say they are.</summary>
public sealed class CarGeneratorTests
{
    [Theory]
    [InlineData(CarKind.Realistic, 0, 0)]
    [InlineData(CarKind.Dense, 0, 0)]
    [InlineData(CarKind.Tangled, 0.07, 0.13)]
    public void As_much_lies_further_in_as_the_kind_says(CarKind kind, double least, double most)
    {
        var shape = new CarShape(kind, 300, 1);
        var car = CarGenerator.Make(shape);
        var inward = car.Structure.Parts.Where(part => !part.Fixed)
            .SelectMany(part => part.Out.Clear, (part, fact) => IsInward(part.Id, fact))
            .Concat(car.Structure.Joints.SelectMany(joint => joint.Ways, (joint, way) => (joint, way))
                .SelectMany(pair => pair.way.Clear.Where(fact => fact.Kind == FactKind.Off),
                    (pair, fact) => IsInward(pair.joint.Holds[0], fact)))
            .ToList();
        Assert.InRange(inward.Count(isInward => isInward) / (double)inward.Count, least, most);

        bool IsInward(string part, Fact fact) => Place(fact.Subject) > Place(part);
        int Place(string part) => int.Parse(part[1..]) % shape.ZoneSize;
    }

    [Theory]
    [InlineData(CarKind.Realistic, 0.3)]
    [InlineData(CarKind.Dense, 0.6)]
    public void As_many_joints_have_several_ways(CarKind kind, double share)
    {
        var joints = CarGenerator.Make(new(kind, 1000, 2)).Structure.Joints;
        Assert.InRange(joints.Count(joint => joint.Ways.Count > 1) / (double)joints.Count, share - 0.05, share + 0.05);
    }

    [Fact]
    public void Equal_shapes_give_equal_cars()
    {
        var shape = new CarShape(CarKind.Tangled, 100, 7);
        Assert.Equal(CarGenerator.Make(shape), CarGenerator.Make(shape));
        Assert.NotEqual(CarGenerator.Make(shape), CarGenerator.Make(shape with { Seed = 8 }));
        Assert.Empty(QuestionCheck.Of(CarGenerator.Make(shape), new() { Goals = CarGenerator.Goals(shape, 20) }));
    }
}
