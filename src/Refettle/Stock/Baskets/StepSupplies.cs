using Refettle.Access;

namespace Refettle.Stock.Baskets;

/// <summary>What a step uses up, with whether it is in hand.</summary>
/// <param name="Step">Its place in the plan, from 0.</param>
public sealed record StepSupply(int Step, ValueList<Served> Uses)
{
    public bool InHand => Uses.All(line => line.InHand);
}

/// <summary>Tells the steps of a plan whether what they use up is there.</summary>
public static class StepSupplies
{
    /// <returns>The steps that use something up, in their order.</returns>
    public static ValueList<StepSupply> Of(Car car, Plan plan, Basket basket)
    {
        var lines = basket.Lines.Concat(basket.Unnumbered.Select(need => new Served(need, [], need.Count)))
            .Where(line => line.Need.Car == car.Id).ToLookup(line => line.Need.Thing);
        return plan.Steps
            .Select((step, place) => new StepSupply(place, Things(step).Distinct().SelectMany(thing => lines[thing]).ToValueList()))
            .Where(step => step.Uses.Count > 0).ToValueList();
    }

    private static IEnumerable<string> Things(Step step) =>
        step.Destroys.Select(part => $"part {part}").Concat(step.Fact.Kind == FactKind.Open ? [$"joint {step.Fact.Subject}"] : []);
}
