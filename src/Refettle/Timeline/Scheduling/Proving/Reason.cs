namespace Refettle.Timeline.Scheduling.Proving;

internal enum ReasonKind
{
    /// <summary>Tried, or true whatever is tried.</summary>
    None,
    Clause,
    Lag,
    Full,
}

/// <summary>Why a side came to a value, as little of it as serves to find the statements that it follows from.</summary>
internal readonly record struct Reason(ReasonKind Kind, int What, int With)
{
    /// <summary>All other statements of a learned clause are false.</summary>
    public static Reason OfClause(int clause) => new(ReasonKind.Clause, clause, 0);

    /// <summary>Another side, and the lag from there.</summary>
    public static Reason OfLag(int side, int lag) => new(ReasonKind.Lag, side, lag);

    /// <summary>Others take so much of a resource at a time that the activity does not fit in beside them.</summary>
    public static Reason OfFull(int resource, int time) => new(ReasonKind.Full, resource, time);
}
