namespace Refettle.Access;

/// <summary>Turns what a way takes and destroys into minutes, by the owner's settings.</summary>
internal static class Pricing
{
    /// <summary>Costs are compared in hundredths of a minute.</summary>
    public static long Hundredths(Minutes minutes) => decimal.ToInt64(Round(minutes.Value) * 100);

    /// <param name="refit">How it is closed instead; null when the way says it.</param>
    public static Cost Of(Way way, CarStanding standing, RefitWay? refit = null) =>
        new(Round(way.Open), Round(refit?.Takes ?? way.Close), Destroyed(way, standing), Minutes.Zero);

    public static Cost Of(WayOut way) => new(Round(way.Off), Round(way.Refit?.Takes ?? way.On), Minutes.Zero, Minutes.Zero);

    /// <summary>The owner's penalty for so many unique parts that come off.</summary>
    public static Cost OfUniques(int count, Settings settings) =>
        Cost.Nothing with { Unique = new(Round(settings.UniqueOff).Value * count) };

    /// <summary>What a way uses up and destroys, in the car's currency.</summary>
    public static Money MoneyOf(Way way, CarStanding standing)
    {
        var money = way.Spends.Amount;
        foreach (var name in way.Destroys)
            money += (standing.Parts[name].Price ?? standing.Car.Settings.UnknownPrice).Amount;
        return new(money);
    }

    private static Minutes Destroyed(Way way, CarStanding standing) =>
        new(Round(MoneyOf(way, standing).Amount / standing.Car.Settings.PerHour.Amount * 60));

    private static Minutes Round(Minutes minutes) => new(Round(minutes.Value));

    private static decimal Round(decimal minutes) => decimal.Round(minutes, 2, MidpointRounding.AwayFromZero);
}
