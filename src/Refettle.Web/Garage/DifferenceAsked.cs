namespace Refettle.Web.Garage;

/// <summary>Asks by what entries change plan, basket and scope.</summary>
/// <param name="Entries">The newest entries of the car, which the server has.</param>
public sealed record DifferenceAsked(ValueList<Guid> Entries);
