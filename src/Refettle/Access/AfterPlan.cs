namespace Refettle.Access;

/// <summary>The car as a plan leaves it.</summary>
public static class AfterPlan
{
    public static Car Of(Car car, Plan plan)
    {
        var stances = car.Structure.States.Where(state => state.IsStance).Select(state => state.Id).ToHashSet();
        var reached = plan.Steps.Select(step => step.Fact).Where(fact => fact.Kind != FactKind.State || !stances.Contains(fact.Subject));
        var last = plan.Steps.LastOrDefault(step => step.Fact.Kind == FactKind.State && stances.Contains(step.Fact.Subject));
        return car with
        {
            Done = car.Done.Concat(reached).Distinct().ToValueList(),
            Stance = last?.Fact.Subject ?? car.Stance,
        };
    }
}
