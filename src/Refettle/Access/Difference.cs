namespace Refettle.Access;

/// <summary>What tells one plan from another.</summary>
internal static class Difference
{
    public static OtherPlan Between(Plan best, Plan other)
    {
        var bestWays = best.Steps.DistinctBy(step => step.Fact).ToDictionary(step => step.Fact, step => step.Way);
        var otherWays = other.Steps.DistinctBy(step => step.Fact).ToDictionary(step => step.Fact, step => step.Way);
        return new(
            other,
            otherWays.Keys.Where(fact => !bestWays.ContainsKey(fact)).Order().ToValueList(),
            bestWays.Keys.Where(fact => !otherWays.ContainsKey(fact)).Order().ToValueList(),
            otherWays.Where(pair => bestWays.TryGetValue(pair.Key, out var way) && way != pair.Value)
                .Select(pair => $"{pair.Key}: {pair.Value}").Order(StringComparer.Ordinal).ToValueList());
    }
}
