namespace Refettle.Web.Garage;

/// <summary>Asks what else is worth doing once these facts are true.</summary>
public sealed record SinceOpenAsked(ValueList<Fact> Goals);
