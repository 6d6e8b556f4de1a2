namespace Refettle.Logbook;

/// <summary>What an entry about judging tells, in a line.</summary>
public static class JudgingSayings
{
    /// <param name="happening">The happening.</param>
    /// <param name="name">The name of <c>part x</c>, <c>joint x</c> or <c>space x</c>.</param>
    /// <returns>Null when it is about something else.</returns>
    public static string? Of(Happening happening, Func<string, string> name) => happening switch
    {
        Found found => $"Found: {name(found.Finding.Of)}, {Of(found.Finding)}",
        LimitSet set => $"Limit for {name(set.Limit.Of)}: {set.Limit}{(set.Limit.Source is { } source ? $" ({source})" : "")}",
        PartEstimated estimated => $"Known of {name($"part {estimated.Estimate.Part}")}: {Of(estimated.Estimate)}",
        VerdictGiven given =>
            $"Verdict: {Word(given.Verdict.Kind).ToLowerInvariant()} {name($"part {given.Verdict.Part}")}{(given.Verdict.By == DoneBy.OutsideShop ? ", by an outside shop" : "")}{Because(given.Verdict.Why)}",
        VerdictWithdrawn withdrawn => $"Verdict withdrawn: {name($"part {withdrawn.Part}")}",
        BaselineTold { Answer: var answer } => $"As it came, {answer.Item}: {answer.Says ?? $"left out, {answer.WhyNot}"}",
        SoakBegun begun => $"Soaks: {name($"joint {begun.Joint}")} ({begun.Rung})",
        ReachJudged { Reach: var reach } =>
            $"{reach.Rung} {(reach.Reaches ? "reaches" : "does not reach")} {name($"joint {reach.Joint}")}{(reach.Once.Count > 0 ? $" before {string.Join(", ", reach.Once)}" : "")}",
        MissingAccepted accepted =>
            $"{accepted.Rung} at {name($"joint {accepted.Joint}")} although the parts are not in hand{Because(accepted.Why)}",
        _ => null,
    };

    /// <summary>A finding without the name of the thing: <c>bush: torn; movement 3.2 mm</c>.</summary>
    public static string Of(Finding finding)
    {
        var words = new[] { finding.Word, finding.Reading?.ToString(), finding.Note }.Where(word => !string.IsNullOrWhiteSpace(word));
        return $"{ConditionScales.Find(finding.Scale)?.Name.ToLowerInvariant() ?? finding.Scale}: {string.Join("; ", words)}";
    }

    /// <summary>What is known, in words.</summary>
    public static string Of(PartEstimate estimate) => string.Join(", ", new (object? Figure, string Says)[]
    {
        (estimate.Work, $"{estimate.Work} to refurbish"), (estimate.Material, $"material {estimate.Material}"),
        (estimate.OutsidePrice, $"outside shop {estimate.OutsidePrice}"),
        (estimate.OutsideDays, $"{estimate.OutsideDays:0.#} days out"), (estimate.Price, $"another one {estimate.Price}"),
        (estimate.LeadDays, $"{estimate.LeadDays:0.#} days to come"),
        (estimate.SubstitutePrice, $"a substitute {estimate.SubstitutePrice}"),
        (estimate.SubstituteWork, $"{estimate.SubstituteWork} to fit it"), (estimate.SoldWith, $"sold only with {estimate.SoldWith}"),
    }.Where(pair => pair.Figure is not null).Select(pair => pair.Says));

    public static string Word(VerdictKind kind) => kind.ToString();

    private static string Because(string? why) => string.IsNullOrWhiteSpace(why) ? "" : $": {why}";
}
