using Refettle.Checks;
using static Refettle.Tests.Checks.Small;

namespace Refettle.Tests.Checks;

public sealed class StructureCheckTests
{
    private static readonly Structure Sound = Of(
        Body, Part("tank"), Part("pump"), new Zone { Id = "rear", Name = "Rear" }, Stance("up"), Stance("down"),
        Joint("straps", "tank", "body"), Joint("ring", "pump", "tank"),
        new SubAssembly { Id = "unit", Name = "Tank with pump", Members = ["tank", "pump"] },
        new Space { Id = "above", Name = "Above the tank", ClosedBy = ["tank"] });

    [Fact]
    public void A_sound_structure_has_no_fault() => Assert.Empty(StructureCheck.Of(Sound));

    public static TheoryData<string, string, string> Broken => new()
    {
        { "joint bad", "holds[1]", "\"tink\" is not a part that is described" },
        { "joint lone", "holds", "it holds 1 part" },
        { "joint stuck", "ways", "there is no way to open it" },
        { "part tank", "", "there is a part \"tank\" already" },
        { "sub-assembly pump", "", "there is a part \"pump\" already" },
        { "part Big One", "", "\"Big One\" cannot be an identifier" },
        { "part slow", "out.off", "out.off is -1 min" },
        { "joint long", "ways[0].open", "ways[0].open is 100001 min" },
        { "part slow", "out.clear[0]", "\"gone\" is not a space that is described" },
        { "part slow", "out.clear[1]", "open(tank): tank is a part or sub-assembly" },
        { "part slow", "out.clear[2]", "off(body) is asked for, but part body is fixed and never comes off" },
        { "part slow", "out.clear[4]", "state(up) and state(down) are both asked for, but a car is in one stance at a time" },
        { "sub-assembly half", "members", "it has 1 member" },
        { "sub-assembly half", "members[0]", "\"wheel\" is not a part that is described" },
        { "sub-assembly all", "members", "part body is fixed and never comes off" },
        { "space void", "closed-by", "nothing closes it" },
        { "space deep", "closed-by[0]", "\"lid\" is not a part that is described" },
        { "joint saw", "ways[0].destroys[0]", "\"nothing\" is not a part that is described" },
        { "joint saw", "ways[1].where", "it is opened on the bench, but part body is fixed and never gets there" },
        { "joint saw", "ways[1].id", "there is a way \"hand\" already" },
        { "state odd", "supports", "parts that carry the car are named, but it is not a stance" },
        { "state odd", "ways", "there is no way to bring it about" },
        { "part slow", "zone", "\"reer\" is not a zone that is described" },
        { "part slow", "mass", "mass is 0 kg" },
        { "joint long", "count", "count is 0" },
        { "joint long", "exposure", "exposure is 5" },
        { "joint saw", "ways[0].odds", "ways[0].odds is 1.5" },
    };

    private static readonly Structure Unsound = Sound.With(Of(
        Part("Big One"),
        Part("slow", Fact.Reach("gone"), Fact.Open("tank"), Fact.Off("body"), Fact.State("up"), Fact.State("down")) with
        {
            Zone = "reer",
            Mass = new(0),
        },
        Joint("bad", "tank", "tink"), Joint("lone", "tank", "body") with { Holds = ["tank"] },
        Joint("stuck", "tank", "body") with { Ways = [] },
        Joint("long", "tank", "body") with { Ways = [Way() with { Open = new(100_001) }], Count = 0, Exposure = 5 },
        Joint("saw", "tank", "body") with
        { Ways = [Way() with { Destroys = ["nothing"], Odds = 1.5m }, Way() with { Where = WorkPlace.OnBench }] },
        new SubAssembly { Id = "half", Name = "Half", Members = ["wheel"] },
        new SubAssembly { Id = "all", Name = "All", Members = ["body", "tank"] },
        new SubAssembly { Id = "pump", Name = "Pump", Members = ["pump", "tank"] },
        new Space { Id = "void", Name = "Void", ClosedBy = [] },
        new Space { Id = "deep", Name = "Deep", ClosedBy = ["lid"] },
        new State { Id = "odd", Name = "Odd", Ways = [], Supports = ["tank"] }));

    [Theory]
    [MemberData(nameof(Broken))]
    public void Each_fault_is_found_where_it_is(string place, string path, string found)
    {
        var twice = Unsound with
        {
            Parts = [.. Unsound.Parts.Select(part => part.Id == "slow" ? part with { Out = part.Out with { Off = new(-1) } } : part),
                Part("tank")],
        };
        Assert.Contains(StructureCheck.Of(twice), fault => fault.Place == place && fault.Path == path && fault.Found == found);
    }

    [Fact]
    public void A_name_that_was_probably_meant_is_suggested() =>
        Assert.Contains(StructureCheck.Of(Unsound), fault => fault.Place == "joint bad" && fault.Mend == "Did you mean tank?");

    [Fact]
    public void A_joint_that_holds_a_part_twice_holds_one()
    {
        var faults = StructureCheck.Of(Of(Body, Part("a"), Joint("j", "a", "a")));
        Assert.Contains(faults, fault => fault.Found == "\"a\" is named twice");
        Assert.Contains(faults, fault => fault.Found == "it holds 1 part");
    }
}
