namespace Refettle.Logbook;

/// <summary>Whether what is found, limited or decided may be written into a car's log.</summary>
internal static class JudgingCheck
{
    private const int MostWords = 500;
    private const int MostValues = 100;

    /// <summary>All faults of a happening about judging; none for others.</summary>
    public static IEnumerable<Fault> Of(Car car, Happening happening) => happening switch
    {
        Found found => Found(car, found.Finding),
        LimitSet set => Limited(car, set.Limit),
        PartEstimated estimated => Estimated(car, estimated.Estimate),
        VerdictGiven given => Named(car, $"part {given.Verdict.Part}").Concat(Words("verdict", given.Verdict.Why)),
        VerdictWithdrawn withdrawn => car.Verdicts.Any(verdict => verdict.Part == withdrawn.Part) ? []
            : [new($"part {withdrawn.Part}", "there is no verdict of yours on it", "Nothing has to be withdrawn.")],
        BaselineTold told => Told(told.Answer),
        SoakBegun begun => Named(car, $"joint {begun.Joint}"),
        ReachJudged judged => Named(car, $"joint {judged.Reach.Joint}").Concat(judged.Reach.Once.SelectMany(fact => Facts(car, fact))),
        MissingAccepted accepted => Named(car, $"joint {accepted.Joint}").Concat(Words("leave", accepted.Why))
            .Concat(string.IsNullOrWhiteSpace(accepted.Why)
                ? [new($"joint {accepted.Joint}", "it is not said why it cannot wait", "Say it: it stays in the log.")]
                : []),
        _ => [],
    };

    private static IEnumerable<Fault> Found(Car car, Finding finding)
    {
        foreach (var fault in Named(car, finding.Of).Concat(Words(finding.Of, finding.Note)))
            yield return fault;
        var scale = ConditionScales.Find(finding.Scale);
        if (scale is null)
            yield return new(finding.Of, $"there is no scale {finding.Scale}",
                NearNames.Ask(finding.Scale, ConditionScales.All.Select(one => one.Id), "refettle find lists them."));
        else if (finding.Word is { } word && scale.Find(word) is null)
            yield return new(finding.Of, $"\"{word}\" is no word for a {scale.Name.ToLowerInvariant()}",
                $"Say one of: {string.Join(", ", scale.Words.Select(one => one.Word))}.");
        if (finding.Word is null && finding.Reading is null)
            yield return new(finding.Of, "nothing is said", "Give a word of the scale, a measured value, or both.");
        if (finding.Photos.Any(photo => !ContentHash.IsValid(photo)))
            yield return new(finding.Of, "a photo is not named by the hash of its bytes", "Take it from the list of photos.");
        if (finding.Reading is { } reading)
        {
            if (reading.Values.Count is 0 or > MostValues)
                yield return new(finding.Of, $"{reading.Values.Count} values are given", $"Give 1 to {MostValues}.");
            if (reading.Resolution <= 0)
                yield return new(finding.Of, $"a resolution of {reading.Resolution}", "Give more than 0, or leave it out.");
            if (string.IsNullOrWhiteSpace(reading.What) || string.IsNullOrWhiteSpace(reading.Unit))
                yield return new(finding.Of, "it is not said what was measured, or in what unit", "Say both: play 0.4mm.");
        }
    }

    private static IEnumerable<Fault> Limited(Car car, Limit limit)
    {
        foreach (var fault in Named(car, limit.Of))
            yield return fault;
        if (limit.Lower is null && limit.Upper is null)
            yield return new(limit.Of, "neither end of the limit is given", "Give --least, --most or both.");
        if (limit.Lower >= limit.Upper)
            yield return new(limit.Of, $"the least, {limit.Lower}, is not below the most, {limit.Upper}", "Exchange them.");
        if (limit.Origin == Origin.Default)
            yield return new(limit.Of, "a limit has to come from somewhere", "Say whose it is: the maker's, common practice, or your own.");
    }

    private static IEnumerable<Fault> Estimated(Car car, PartEstimate estimate)
    {
        foreach (var fault in Named(car, $"part {estimate.Part}"))
            yield return fault;
        decimal?[] figures =
            [estimate.Work?.Value, estimate.Material?.Amount, estimate.OutsidePrice?.Amount, estimate.OutsideDays, estimate.Price?.Amount,
            estimate.LeadDays, estimate.SubstitutePrice?.Amount, estimate.SubstituteWork?.Value];
        if (figures.Any(figure => figure is < 0 or > 1_000_000))
            yield return new($"part {estimate.Part}", "a figure is below 0 or above a million", "Give what it is.");
        if (estimate.SoldWith is { } with && car.Structure.Parts.All(part => part.Id != with)
            && car.Structure.SubAssemblies.All(unit => unit.Id != with))
            yield return new($"part {estimate.Part}", $"the car has no part or sub-assembly {with}",
                NearNames.Ask(with, car.Structure.Parts.Select(part => part.Id), "See refettle show parts."));
    }

    private static IEnumerable<Fault> Told(BaselineAnswer answer)
    {
        if (BaselineItems.All.All(item => item.Id != answer.Item))
            yield return new($"baseline {answer.Item}", "that is not asked",
                NearNames.Ask(answer.Item, BaselineItems.All.Select(item => item.Id), "refettle baseline lists what is."));
        if (string.IsNullOrWhiteSpace(answer.Says) == string.IsNullOrWhiteSpace(answer.WhyNot))
            yield return new($"baseline {answer.Item}", "it is neither told nor said why not",
                "Say what was found, or why it was left out.");
        foreach (var fault in Words("baseline", answer.Says).Concat(Words("baseline", answer.WhyNot)))
            yield return fault;
    }

    private static IEnumerable<Fault> Words(string place, string? words) =>
        words?.Length > MostWords ? [new(place, $"a line of {words.Length} characters", $"Keep it to {MostWords}.")] : [];

    private static IEnumerable<Fault> Facts(Car car, Fact fact) => Things.Exists(fact, Pruning.Named(car.Structure).ToHashSet()) ? []
        : [new(fact.ToString(), "it names what the car does not have", "See refettle show.")];

    private static IEnumerable<Fault> Named(Car car, string thing)
    {
        var known = Pruning.Named(car.Structure).Where(one => one.Kind is ThingKind.Part or ThingKind.Joint or ThingKind.Space)
            .Select(one => one.ToString()).ToHashSet();
        if (!known.Contains(thing))
            yield return new(thing, $"the car has no {thing}", NearNames.Ask(thing, known, "Write part x, joint x or space x."));
    }
}
