namespace Refettle.Access;

/// <summary>Answers what has to come off.</summary>
/// <remarks>All methods want a car and a question without faults (<see cref="QuestionCheck"/>). A cancelled token gives the best
/// answer so far, with its bound.</remarks>
public interface IAccessPlanner
{
    /// <summary>The least-cost plan that reaches the goals.</summary>
    Plan Reach(Car car, Question question, CancellationToken cancel = default);

    /// <summary>The least cost of reaching the goals, without the plan; null when they cannot be reached.</summary>
    (Cost Cost, bool Proven)? Price(Car car, Question question, CancellationToken cancel = default) =>
        Reach(car, question, cancel) is { Status: not PlanStatus.Impossible } plan ? (plan.Cost, plan.Status == PlanStatus.Optimal) : null;

    /// <summary>Parts and spaces that come within reach of a plan, cheapest first.</summary>
    /// <param name="most">At most this many, 1 or more.</param>
    WithinAnswer Within(Car car, Question question, int most = 20, CancellationToken cancel = default);

    /// <summary>The best plan's alternatives, cheapest first, each without a choice of every earlier one.</summary>
    ValueList<OtherPlan> Others(Car car, Question question, int most = 3, CancellationToken cancel = default);

    /// <param name="second">Other goals, asked for under the same conditions as those of the first question.</param>
    Comparison Compare(Car car, Question first, ValueList<Fact> second, CancellationToken cancel = default);
}
