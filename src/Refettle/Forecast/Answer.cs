namespace Refettle.Forecast;

/// <summary>What many sampled futures say. Times are the project's; all figures carry the standard error of the sampling, which says
/// nothing about how good the durations are that went in.</summary>
public sealed record ForecastAnswer
{
    public required int Futures { get; init; }

    public required ulong Seed { get; init; }

    /// <summary>Finished by then in half of the futures.</summary>
    public required Moment Half { get; init; }

    /// <summary>In four of five.</summary>
    public required Moment FourInFive { get; init; }

    /// <summary>In nineteen of twenty.</summary>
    public required Moment NineteenInTwenty { get; init; }

    /// <summary>The date that was asked for.</summary>
    public int? Date { get; init; }

    /// <summary>The chance of making it; null without a date.</summary>
    public Estimate? ChanceOfDate { get; init; }

    /// <summary>The chance that the windows given do not suffice at all.</summary>
    public required Estimate Unfinished { get; init; }

    /// <summary>Activities for which in some futures no window was left: what they need ends too soon. The likeliest first.</summary>
    public required ValueList<Deciding> Stranded { get; init; }

    /// <summary>What decides the finish: activities with the share of futures in which they lay on the chain
    /// that ended last; greatest first.</summary>
    public required ValueList<Deciding> Deciding { get; init; }

    /// <summary>What would help most, greatest first.</summary>
    public required ValueList<Help> Helps { get; init; }

    /// <summary>Promises of others, the most pressing first.</summary>
    public required ValueList<LatestStart> OrderBy { get; init; }

    /// <summary>Windows between two activities, such as recoating, that closed too soon in some futures; the likeliest first. The second
    /// activity was done all the same: what a missed window costs is not in the forecast.</summary>
    public required ValueList<WindowMissed> TooLate { get; init; }

    /// <summary>The chance of being finished, over time; for a plot.</summary>
    public required ValueList<FinishChance> Curve { get; init; }
}

/// <summary>A time that is not exceeded with some chance; null when it lies beyond the windows given.</summary>
public readonly record struct Moment(int? Time, double StandardError);

/// <param name="Place">Place in the project.</param>
public sealed record Deciding(int Place, string Id, Estimate Share);

/// <summary>The kinds of change that are tried.</summary>
public enum HelpKind
{
    /// <summary>A task takes half its time.</summary>
    Halve,

    /// <summary>An order or outside work starts earlier, by the question's <see cref="ForecastQuestion.Sooner"/>.</summary>
    Sooner,

    /// <summary>A spell is added.</summary>
    Extra,

    /// <summary>No spell is missed.</summary>
    KeepSpells,
}

/// <summary>What one change would bring, found by playing the same futures again with it.</summary>
/// <param name="Subject">Identifier of the activity or resource; the words of an extra spell.</param>
/// <param name="Chance">More chance of the date; null without a date.</param>
/// <param name="Earlier">Finished so much earlier on average, over the futures that finish both ways.</param>
public sealed record Help(HelpKind Kind, string Subject, Estimate? Chance, Estimate Earlier);

/// <summary>When something must be ordered or sent out at the latest.</summary>
/// <param name="Latest">Started by then, it holds nothing up with the question's confidence; null when even at the project's begin that
/// is not so sure.</param>
/// <param name="ChanceAtOnce">The chance that it holds nothing up when it starts as early as it can.</param>
public sealed record LatestStart(int Place, string Id, int? Latest, Estimate ChanceAtOnce);

/// <summary>The latest end of a lag, and how often it was missed.</summary>
public sealed record WindowMissed(string Before, string After, Estimate Chance);

public readonly record struct FinishChance(int Time, double Chance);
