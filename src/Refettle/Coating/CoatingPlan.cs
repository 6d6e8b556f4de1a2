using NodaTime;

namespace Refettle.Coating;

/// <summary>Which coats go on when, and what each session asks for.</summary>
/// <param name="Sessions">In the order of time.</param>
/// <param name="Unplanned">Parts that no occasion or no room is left for, or whose data sheet is not entered far enough.</param>
/// <param name="AtLeast">No plan for the planned parts has fewer sessions.</param>
/// <param name="Notes">What was assumed.</param>
public sealed record CoatingPlan(ValueList<SpraySession> Sessions, ValueList<UnplannedCoat> Unplanned, int AtLeast, ValueList<Fault> Notes)
{
    public bool IsProven => Sessions.Count == AtLeast;
}

/// <summary>One product, mixed once and put on at one occasion.</summary>
/// <param name="At">When it begins, by the clock on the wall.</param>
/// <param name="Air">As read or expected; null when nothing is known.</param>
public sealed record SpraySession(string Product, LocalDateTime At, OccasionAir? Air, ValueList<SprayedPart> Parts)
{
    /// <summary>What to do, in the order of doing, each with the figure of the data sheet or what to look up there.</summary>
    public ValueList<string> Steps { get; init; } = [];

    public ValueList<string> Cautions { get; init; } = [];

    /// <summary>What stays bare, by part.</summary>
    public ValueList<BareSpot> Masks { get; init; } = [];
}

/// <summary>A part in a session.</summary>
/// <param name="Stage">Of its system, counted from 0.</param>
/// <param name="Coats">So many, wet on wet.</param>
/// <param name="NotBefore">The coat before has to be so old; null for the first coat.</param>
/// <param name="NotAfter">Later than that the coat before has to be abraded; null when there is no end or none is entered.</param>
/// <param name="Late">What the sheet of the coat before says to do first because its longest time is over; null when it is not.</param>
public sealed record SprayedPart(string Part, int Stage, int Coats, LocalDateTime? NotBefore, LocalDateTime? NotAfter, string? Late)
{
    /// <summary>The spray corner it hangs in until it is dry, by identifier; null where there are not several.</summary>
    public string? Corner { get; init; }
}

/// <summary>A part that cannot be planned.</summary>
/// <param name="Stage">Of its system, counted from 0.</param>
public sealed record UnplannedCoat(string Part, int Stage, string Product, string Why, string Mend);
