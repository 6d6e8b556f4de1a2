using Refettle.Logbook;

namespace Refettle.SaleFile;

/// <summary>What a sale file is made of.</summary>
public sealed record SaleQuestion
{
    public required CarHistory History { get; init; }

    /// <summary>When it is made.</summary>
    public required DateTimeOffset Made { get; init; }

    /// <summary>Of the key that will sign it.</summary>
    public required string Fingerprint { get; init; }

    public Privacy Privacy { get; init; } = Privacy.Standard;
}

/// <summary>What the owner lets a stranger see. What is not chosen is blacked out in the entries too.</summary>
/// <param name="Prices">Prices, rates and sums of money.</param>
/// <param name="Names">Names of people and shops, addresses.</param>
/// <param name="Hours">How long work took.</param>
/// <param name="Hidden">Entries whose fields are all blacked out.</param>
public sealed record Privacy(bool Prices, bool Names, bool Hours, ValueList<Guid> Hidden)
{
    public static Privacy Standard { get; } = new(Prices: false, Names: false, Hours: true, []);

    /// <summary>What is left out, in words.</summary>
    public ValueList<string> LeftOut =>
        new (bool Shown, string Word)[] { (Prices, "prices"), (Names, "names and addresses"), (Hours, "hours"),
            (Hidden.Count == 0, "single entries") }
        .Where(one => !one.Shown).Select(one => one.Word).ToValueList();
}
