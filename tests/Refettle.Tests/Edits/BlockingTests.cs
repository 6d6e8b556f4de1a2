using Refettle.Edits;

namespace Refettle.Tests.Edits;

public sealed class BlockingTests
{
    private static readonly Structure _car = new()
    {
        Parts = [new() { Id = "tank", Name = "Tank", Out = new() { Clear = [Fact.State("drained")] } }],
        Joints = [new()
            { Id = "straps", Holds = ["tank", "body"],
                Ways = [new() { Id = "undo", Tool = "socket" }, new() { Id = "cut", Tool = "saw", Clear = [Fact.Off("exhaust")] }] }],
        States = [new() { Id = "drained", Name = "Drained", Ways = [new() { Id = "pump", Tool = "pump" }] }],
    };

    [Fact]
    public void A_parts_way_out_needs_it_too() =>
        Assert.Equal([Fact.State("drained"), Fact.Off("exhaust")],
            Blocking.Of(_car, Fact.Off("tank"), [Fact.Off("exhaust")]).Parts[0].Out.Clear);

    [Fact]
    public void Every_way_of_a_joint_needs_it_once() =>
        Assert.All(Blocking.Of(_car, Fact.Open("straps"), [Fact.Off("exhaust")]).Joints[0].Ways,
            way => Assert.Equal([Fact.Off("exhaust")], way.Clear));

    [Fact]
    public void Every_way_to_a_state_needs_it() =>
        Assert.Equal([Fact.Off("exhaust")], Blocking.Of(_car, Fact.State("drained"), [Fact.Off("exhaust")]).States[0].Ways[0].Clear);

    [Fact]
    public void What_has_no_way_of_its_own_stays() =>
        Assert.Equal(Structure.Empty, Blocking.Of(_car, Fact.Free("tank"), [Fact.Off("exhaust")]));
}
