namespace Refettle.Web.Garage;

/// <summary>Which joints to decide about together.</summary>
public sealed record OpenUpAsked(ValueList<string> Joints);

/// <summary>Which parts to judge; none for all of which something was found.</summary>
/// <param name="Planned">What will be done anyway.</param>
/// <param name="DaysLeft">Days until the date to meet; null when there is none.</param>
public sealed record VerdictAsked(ValueList<string> Parts, ValueList<Fact> Planned, decimal? DaysLeft);
