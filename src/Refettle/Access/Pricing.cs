namespace Refettle.Access;

/// <summary>Turns what a way takes and destroys into minutes, by the owner's settings.</summary>
internal static class Pricing
{
    /// <summary>Costs are compared in hundredths of a minute.</summary>
    public static long Hundredths(Minutes minutes) => decimal.ToInt64(Round(minutes.Value) * 100);

    public static Cost Of(Way way, CarStanding standing) =>
        new(Round(way.Open), Round(way.Close), Destroyed(way, standing), Minutes.Zero);

    /// <param name="way">The way out.</param>
    /// <param name="parts">The parts that leave: the owner's penalty counts for each unique one that is still on the car.</param>
    /// <param name="standing">The car.</param>
    public static Cost Of(WayOut way, IEnumerable<string> parts, CarStanding standing)
    {
        var unique = parts.Count(part => standing.Parts[part].Scarcity == Scarcity.Unique && !standing.IsTrue(Fact.Off(part)));
        return new(Round(way.Off), Round(way.On), Minutes.Zero, new(Round(unique * standing.Car.Settings.UniqueOff.Value)));
    }

    private static Minutes Destroyed(Way way, CarStanding standing)
    {
        var settings = standing.Car.Settings;
        var money = way.Spends.Amount;
        foreach (var name in way.Destroys)
            money += (standing.Parts[name].Price ?? settings.UnknownPrice).Amount;
        return new(Round(money / settings.PerHour.Amount * 60));
    }

    private static Minutes Round(Minutes minutes) => new(Round(minutes.Value));

    private static decimal Round(decimal minutes) => decimal.Round(minutes, 2, MidpointRounding.AwayFromZero);
}
