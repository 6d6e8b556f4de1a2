using CsCheck;
using Refettle.Checks;
using static Refettle.Tests.Checks.Small;

namespace Refettle.Tests.Checks;

public sealed class CircleCheckTests
{
    [Fact]
    public void Two_parts_that_wait_for_each_other_are_a_circle()
    {
        var fault = Assert.Single(StructureCheck.Of(Of(Part("a", Fact.Off("b")), Part("b", Fact.Off("a")), Part("c", Fact.Off("a")))));
        Assert.Equal("part a", fault.Place);
        Assert.Equal("circular support that no way can break: off(a) waits for off(b), off(b) waits for off(a)", fault.Found);
    }

    [Fact]
    public void A_way_around_breaks_a_circle()
    {
        var joint = Joint("j", "a", "b", Fact.Off("b"));
        Assert.Single(StructureCheck.Of(Of(Part("a"), Part("b"), joint)));
        Assert.Empty(StructureCheck.Of(Of(Part("a"), Part("b"), joint with { Ways = [.. joint.Ways, Way() with { Id = "cut" }] })));
    }

    [Fact]
    public void A_joint_for_the_bench_alone_needs_a_sub_assembly()
    {
        var bench = Joint("j", "a", "b") with { Ways = [Way() with { Where = WorkPlace.OnBench }] };
        var apart = Of(Part("a"), Part("b"), bench);
        Assert.NotEmpty(StructureCheck.Of(apart));
        Assert.Empty(StructureCheck.Of(apart with { SubAssemblies = [new() { Id = "ab", Name = "ab", Members = ["a", "b"] }] }));
    }

    [Fact]
    public void Separate_circles_are_each_reported_and_followers_are_not()
    {
        var faults = StructureCheck.Of(Of(
            Part("a", Fact.Off("b")), Part("b", Fact.Off("a"), Fact.Off("c")), Part("c", Fact.Off("d")), Part("d", Fact.Off("c")),
            Part("e", Fact.Off("b"))));
        Assert.Equal(["part a", "part c"], faults.Select(fault => fault.Place).Order());
    }

    [Fact]
    public void What_waits_for_something_unknown_or_fixed_is_not_a_circle_too()
    {
        var faults = StructureCheck.Of(Of(Body, Part("a", Fact.Off("body")), Part("b", Fact.Off("ghost")), Part("c", Fact.Off("a"))));
        Assert.Equal(2, faults.Count);
    }

    [Fact]
    public void A_chain_of_ten_thousand_parts_in_a_circle_is_found()
    {
        var parts = Enumerable.Range(0, 10_000).Select(i => Part($"p{i}", Fact.Off($"p{(i + 1) % 10_000}"))).ToArray<object>();
        Assert.Single(StructureCheck.Of(Of(parts)));
    }

    /// <summary>Against the definition, worked out the slow way: start from the ways without needs and
    /// repeat until nothing is added.</summary>
    [Fact]
    public void A_circle_is_reported_exactly_when_some_part_can_never_come_off() =>
        Gen.Int[0, 7].Array[0, 3].Array[8].Sample(needs =>
        {
            var parts = needs.Select((clear, i) => Part($"p{i}", [.. clear.Distinct().Select(need => Fact.Off($"p{need}"))])).ToArray();
            var off = new HashSet<string>();
            while (parts.Any(part => part.Out.Clear.All(fact => off.Contains(fact.Subject)) && off.Add(part.Id)))
            {
            }

            return (off.Count == parts.Length) == (StructureCheck.Of(Of([.. parts])).Count == 0);
        });

    [Fact]
    public void The_order_of_the_lists_changes_nothing()
    {
        var parts = Enumerable.Range(0, 30)
            .Select(i => Part($"p{i:00}", Fact.Off($"p{(i * 7) % 30:00}"), Fact.Off($"p{(i * 11 + 3) % 30:00}"))).ToArray();
        var faults = StructureCheck.Of(Of([.. parts]));
        Assert.NotEmpty(faults);
        Gen.Shuffle(parts)
            .Sample(shuffled => Assert.Equal(faults.Order(Comparer<Fault>.Create((a, b) => string.CompareOrdinal(a.Found, b.Found))),
            StructureCheck.Of(Of([.. shuffled])).Order(Comparer<Fault>.Create((a, b) => string.CompareOrdinal(a.Found, b.Found)))),
            iter: 50);
    }
}
