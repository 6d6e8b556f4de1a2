namespace Refettle.Logbook;

/// <summary>Coatings while a log is folded.</summary>
internal sealed class CoatingBook
{
    private readonly Dictionary<string, CoatingProduct> _products = [];
    private readonly Dictionary<string, CoatingSystem> _systems = [];
    private readonly Dictionary<string, PartCoating> _parts = [];
    private readonly List<AppliedCoat> _applied = [];
    private readonly List<KeptBareSpot> _bare = [];

    public CarCoating All => _products.Count + _systems.Count + _parts.Count + _applied.Count + _bare.Count == 0 ? CarCoating.Empty : new()
    {
        Products = _products.Values.OrderBy(product => product.Id, StringComparer.Ordinal).ToValueList(),
        Systems = _systems.Values.OrderBy(system => system.Id, StringComparer.Ordinal).ToValueList(),
        Parts = _parts.Values.OrderBy(part => part.Part, StringComparer.Ordinal).ToValueList(),
        Applied = _applied.ToValueList(),
        Bare = _bare.ToValueList(),
    };

    /// <summary>Applies what is about coating, or says why it does not fit; other happenings pass.</summary>
    public string? Apply(Happening happening, StructureBuilder car)
    {
        switch (happening)
        {
            case ProductDescribed described:
                _products[described.Product.Id] = described.Product;
                return null;
            case CoatingSystemDescribed described:
                return Missing(described.System.Stages.Select(stage => stage.Product))
                    ?? Keep(() => _systems[described.System.Id] = described.System);
            case CoatingChosen chosen:
                return Choose(chosen, car);
            case CoatApplied { Coat: var coat }:
                return Missing([coat.Product]) ?? Unknown(coat.Parts, car) ?? Keep(() => _applied.Add(coat));
            case KeptBare { Spot: var spot }:
                return Unknown([spot.Part], car) ?? Keep(() => _bare.Add(spot));
            default:
                return null;
        }
    }

    /// <summary>Lets go of what the description no longer has.</summary>
    public void Forget(StructureBuilder car)
    {
        foreach (var gone in _parts.Keys.Where(part => !car.Parts.ContainsKey(part)).ToList())
            _parts.Remove(gone);
        _bare.RemoveAll(spot => !car.Parts.ContainsKey(spot.Part));
    }

    private string? Choose(CoatingChosen chosen, StructureBuilder car)
    {
        if (Unknown(chosen.Parts.Select(one => one.Part), car) is { } refused)
            return refused;
        if (chosen.System is { } system && !_systems.ContainsKey(system))
            return $"there is no coating system {system}";
        foreach (var (part, area) in chosen.Parts)
        {
            if (chosen.System is { } name)
                _parts[part] = new(part, name, area ?? _parts.GetValueOrDefault(part)?.SquareMetres);
            else
                _parts.Remove(part);
        }

        return null;
    }

    private string? Missing(IEnumerable<string> products) =>
        products.FirstOrDefault(product => !_products.ContainsKey(product)) is { } missing ? $"there is no product {missing}" : null;

    private static string? Unknown(IEnumerable<string> parts, StructureBuilder car) =>
        parts.FirstOrDefault(part => !car.Parts.ContainsKey(part)) is { } unknown ? $"the car has no part {unknown}" : null;

    private static string? Keep(Action keep)
    {
        keep();
        return null;
    }
}
