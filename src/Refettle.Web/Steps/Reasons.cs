using Refettle.Access;
using Refettle.Web.Words;

namespace Refettle.Web.Steps;

/// <summary>Why a step is in a plan, in words.</summary>
public static class Reasons
{
    /// <summary>From the step to the nearest goal, each fact because the next needs it.</summary>
    public static string Of(Plan plan, int step, CarLookup car) => Why.Of(plan, plan.Steps[step].Fact) switch
    {
        { Path.Count: 1 } => "This is what you want.",
        { Path.Count: > 1 } why => $"Needed for {string.Join(", for ", why.Path.Skip(1).Select(car.Name))}: what you want.",
        _ => "Nothing after it needs it.",
    };
}
