namespace Refettle.Forecast;

/// <summary>How late a supplier or shop is, as far as it is known.</summary>
/// <param name="IsShop">As an outside shop, not as one who delivers.</param>
/// <param name="Seen">Promises that it is known from; 0 for none.</param>
/// <param name="Says">In words, with what it rests on.</param>
public sealed record KnownLateness(string Who, bool IsShop, Lateness Lateness, int Seen, string Says)
{
    public Origin Origin => Seen == 0 ? Origin.CommonPractice : Origin.Measured;
}
