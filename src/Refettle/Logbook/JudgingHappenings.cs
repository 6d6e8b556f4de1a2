namespace Refettle.Logbook;

/// <summary>A condition was seen or measured. <c>found</c></summary>
public sealed record Found(Finding Finding) : Happening;

/// <summary>A limit for what is measured became known; one for the same thing before it is replaced. <c>limit-set</c></summary>
public sealed record LimitSet(Limit Limit) : Happening;

/// <summary>What the owner knows of a part's price, work and times, whole. <c>part-estimated</c></summary>
public sealed record PartEstimated(PartEstimate Estimate) : Happening;

/// <summary>The owner says what will be done with a part. <c>verdict-given</c></summary>
public sealed record VerdictGiven(Verdict Verdict) : Happening;

/// <summary>The owner leaves it to the suggestion again. <c>verdict-withdrawn</c></summary>
public sealed record VerdictWithdrawn(string Part) : Happening;

/// <summary>Something is told of the car as it came. <c>baseline-told</c></summary>
public sealed record BaselineTold(BaselineAnswer Answer) : Happening;

/// <summary>A joint soaks from now on; the next try at it ends that. <c>soak-begun</c></summary>
/// <param name="Rung">The rung of its ladder that is a soak.</param>
/// <param name="Since">When, by the clock on the wall.</param>
public sealed record SoakBegun(string Joint, string Rung, DateTimeOffset Since) : Happening;

/// <summary>A tool does not reach a joint, or does after all. <c>reach-judged</c></summary>
public sealed record ReachJudged(ToolReach Reach) : Happening;

/// <summary>A try may be done although what it destroys is not in hand: the owner says so. No other gate opens
/// by this. <c>missing-accepted</c></summary>
/// <param name="Why">Why it cannot wait.</param>
public sealed record MissingAccepted(string Joint, string Rung, string Why) : Happening;
