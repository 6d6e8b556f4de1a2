namespace Refettle.Timeline.Network;

/// <summary>Names of what tasks need beside the owner's hands.</summary>
public static class Needed
{
    public const string Helper = "helper";

    public const string Bench = "bench";

    public const string SprayCorner = "spray-corner";

    public const string Lift = "lift";

    /// <summary>What carries a car that does not roll.</summary>
    public const string Dollies = "dollies";

    /// <summary>A facility of the calendar, by its identifier.</summary>
    public static string Facility(string id) => $"facility {id}";
}
