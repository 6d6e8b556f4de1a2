namespace Refettle.Kits;

/// <summary>Where a kit is added and what its parts are called there.</summary>
internal sealed record KitPlace(Spot Spot, string? AskedPrefix)
{
    /// <summary><c>rl-</c>, or what was asked for; empty for neither.</summary>
    public string Prefix
    {
        get
        {
            var word = string.IsNullOrWhiteSpace(AskedPrefix) ? Spot.Code() : AskedPrefix.Trim().TrimEnd('-');
            return word.Length == 0 ? "" : word + "-";
        }
    }

    public string Instance(Kit kit) => $"{kit.Id} {Prefix.TrimEnd('-')}".TrimEnd();

    /// <summary>What stands for the names in braces that are not holes.</summary>
    public Dictionary<string, string> Values(Kit kit)
    {
        var values = new Dictionary<string, string> { ["p"] = Prefix, ["side"] = Spot.Code(), ["Side"] = Words() };
        values["zone"] = Braces.Fill(kit.Zone, values);
        return values;
    }

    /// <summary>Everything that is wrong with adding the kit there.</summary>
    public IEnumerable<Fault> Faults(Kit kit)
    {
        var sides = string.Join(", ", kit.Spots.Select(spot => spot.Code()));
        if (kit.Spots.Count == 0 && Spot != Spot.None)
            yield return new($"kit {kit.Id}", $"it has no sides, and {Spot.Code()} was asked for",
                "Leave the side out; a second one is told apart by a prefix");
        else if (kit.Spots.Count > 0 && !kit.Spots.Contains(Spot))
            yield return new($"kit {kit.Id}", Spot == Spot.None ? "it needs a side" : $"it has no side {Spot.Code()}",
                $"Give one of {sides}");
        if (Prefix.Length > 0 && !Identifier.IsValid(Prefix + "x"))
            yield return new($"kit {kit.Id}", $"the prefix \"{AskedPrefix}\" cannot begin an identifier",
                "Use small letters, digits and - only");
    }

    /// <summary>The spot in words, with what the prefix says beyond it: <c>Spare rear left</c>.</summary>
    private string Words()
    {
        var word = Prefix.TrimEnd('-');
        if (Spot != Spot.None && word == Spot.Code())
            return Spot.Words();
        var own = Spot != Spot.None && word.EndsWith("-" + Spot.Code(), StringComparison.Ordinal)
            ? word[..^(Spot.Code().Length + 1)]
            : word;
        return Capital($"{own.Replace('-', ' ')} {Spot.Words().ToLowerInvariant()}".Trim());
    }

    /// <summary>The text with a capital in front.</summary>
    public static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
