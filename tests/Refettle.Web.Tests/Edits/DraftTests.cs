using Refettle.Server.Tests;
using Refettle.Web.Edits;

namespace Refettle.Web.Tests.Edits;

public sealed class DraftTests
{
    [Fact]
    public void What_is_not_typed_stays_as_it_was()
    {
        foreach (var part in SmallCar.Structure.Parts)
            Assert.Equal(part, new PartDraft(part).ToPart(part.Id).Value);
        foreach (var joint in SmallCar.Structure.Joints)
            Assert.Equal(joint, new JointDraft(joint).ToJoint(joint.Id).Value);
    }

    [Fact]
    public void All_that_is_no_number_is_named_at_once()
    {
        var draft = new PartDraft(SmallCar.Structure.Parts[1]) { Mass = "heavy", Off = "", Count = "1.5", Price = "12,50" };
        Assert.Equal(["count", "mass", "off"], draft.ToPart("rear-axle").Faults.Select(fault => fault.Path).Order());
    }

    [Fact]
    public void A_figure_that_was_changed_is_the_users_and_no_longer_common_practice()
    {
        var joint = SmallCar.Structure.Joints[0];
        var draft = new JointDraft(joint);
        draft.Ways[0].Open = "7,5";
        var way = draft.ToJoint(joint.Id).Value.Ways[0];
        Assert.Equal((new Minutes(7.5m), Origin.User), (way.Open, way.Origin));
        Assert.Equal(Origin.CommonPractice, draft.ToJoint(joint.Id).Value.Origin);
    }

    [Fact]
    public void A_joint_without_a_way_gets_the_usual_one_marked_as_a_default()
    {
        var draft = new JointDraft(JointDraft.Blank("propshaft")) { Kind = JointKind.Clip };
        Assert.Equal(Origin.Default, Assert.Single(draft.ToJoint("clip").Value.Ways).Origin);
    }

    [Fact]
    public void A_change_is_judged_by_what_it_makes_worse()
    {
        var broken = SmallCar.Structure with
        { Joints = [.. SmallCar.Structure.Joints, new Joint { Id = "lost", Holds = ["nobody"], Ways = [] }] };
        var good = SmallCar.Structure.Parts[1] with { Name = "Axle" };
        Assert.Empty(Description.NewFaults(broken, new() { Parts = [good] }));
        Assert.NotEmpty(Description.NewFaults(broken, new() { Parts = [good with { Zone = "moon" }] }));
    }

    [Theory]
    [InlineData("Rear axle", "rear-axle-2")]
    [InlineData("Bump stop", "bump-stop")]
    [InlineData("軸", "thing")]
    public void An_identifier_is_made_from_the_name_and_never_taken_twice(string name, string id) =>
        Assert.Equal(id, Description.FreeId(name, ["rear-axle", "body"]));
}
