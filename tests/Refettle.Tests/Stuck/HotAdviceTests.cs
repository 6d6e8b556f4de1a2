using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;
using Refettle.Tests.Access;

namespace Refettle.Tests.Stuck;

/// <summary>Advice on tries with fire (29 CFR 1910.252(a)): what burns near it is away by then, as
/// <see cref="FireOracle"/> sees it, which shares nothing with the gates.</summary>
public sealed class HotAdviceTests
{
    private static readonly Way _torch = new() { Id = "try", Tool = "torch" };

    private static readonly AtHand _all = new([], [AtHand.All]);

    [Fact]
    public void Advice_on_a_stuck_joint_offers_no_fire_near_what_burns()
    {
        var (offered, refused) = (0, 0);
        for (var seed = 0; seed < 200; seed++)
        {
            var car = HalfApart(seed);
            foreach (var joint in car.Structure.Joints)
            {
                var burning = FireOracle.Burning(car, joint, _torch, Off(car, car.Done), States(car.Done)).ToList();
                var options = StuckAdvice.Of(car, joint.Id, OnlyHot, _all).Next?.Options ?? [];
                (offered, refused) = (offered + (options.Count > 0 ? 1 : 0), refused + (burning.Count > 0 ? 1 : 0));
                Assert.True(burning.Count == 0 || options.Count == 0, $"seed {seed}, {joint.Id}: {string.Join(", ", burning)}");
            }
        }

        Assert.True(offered > 100 && refused > 100, $"{offered} offered, {refused} refused");
    }

    /// <summary>Whatever is opened first: once all that a hot try waits for is open, nothing burns near it any more; where that can never
    /// be, it is out of the question.</summary>
    [Fact]
    public void What_to_open_first_counts_on_no_fire_near_what_burns()
    {
        var (counted, refused) = (0, 0);
        for (var seed = 0; seed < 120; seed++)
        {
            var car = HalfApart(seed);
            foreach (var joint in car.Structure.Joints.Where(joint => !joint.Holds.Any(Off(car, car.Done).Contains)))
            {
                var made = OpenUpCase.Of(car, [joint.Id], [], OnlyHotAndSure, _all, Later.CommonPractice,
                    new AccessPlanner(new ReducedSolver()));
                if (!made.IsGood)
                    continue;
                var (asked, hot) = (made.Value.Question.Joints[0], OnlyHot.Ladders[0].Rungs[0].Id);
                if (asked.Forbidden.Contains(hot))
                {
                    refused++;
                    continue;
                }

                var needed = asked.Needs.GetValueOrDefault(hot, []).SelectMany(number => made.Value.Question.Openings[number].Facts);
                Fact[] by = [.. car.Done, .. made.Value.Before.Steps.Select(step => step.Fact), .. needed];
                Assert.True(!FireOracle.Burning(car, joint, _torch, Off(car, by), States(by)).Any(), $"seed {seed}, {joint.Id}");
                counted++;
            }
        }

        Assert.True(counted > 50 && refused > 5, $"{counted} counted on, {refused} refused");
    }

    private static LadderSet OnlyHotAndSure =>
        new([OnlyHot.Ladders[0] with
            { Rungs = [.. OnlyHot.Ladders[0].Rungs,
                new() { Id = "by hand", Says = "Hacksaw", Takes = new(90), Odds = [1, 1, 1, 1, 1] }] }]);

    private static LadderSet OnlyHot => new([GateTests.Ladder().Ladders[0] with { Rungs = [GateTests.Ladder().Ladders[0].Rungs[^1]] }]);

    private static Car HalfApart(int seed)
    {
        var car = HotCars.Make(seed, hazardOneIn: 8);
        var random = new Random(seed);
        var off = car.Structure.Parts.Skip(1).Where(_ => random.Next(2) == 0).Select(part => Fact.Off(part.Id));
        var safe = car.Structure.States.Where(state => state.Id is "brakes-drained" or "airbags-safe" && random.Next(2) == 0)
            .Select(state => Fact.State(state.Id));
        return car with { Done = off.Concat(safe).ToValueList() };
    }

    private static HashSet<string> Off(Car car, IEnumerable<Fact> done) =>
    [
        .. done.Where(fact => fact.Kind == FactKind.Off)
            .SelectMany(fact => car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject) is { } unit
                ? unit.Members.ToArray()
                : [fact.Subject]),
    ];

    private static HashSet<string> States(IEnumerable<Fact> done) =>
        [.. done.Where(fact => fact.Kind == FactKind.State).Select(fact => fact.Subject)];
}
