namespace Refettle.Logbook;

/// <summary>The bags while a log is folded. Two devices that pack one bag at once both add to it: nothing is lost.</summary>
internal sealed class BagShelf
{
    private readonly Dictionary<string, Bag> _bags = [];

    /// <summary>Applies what is about bags, or says why it does not fit; other happenings pass.</summary>
    public string? Apply(Happening happening) => happening switch
    {
        BagPacked packed => Pack(packed),
        BagMoved moved => Change(moved.Code, bag => bag with { Place = moved.Place }),
        BagEmptied emptied => Change(emptied.Code, bag => bag with { IsEmpty = true }),
        _ => null,
    };

    /// <summary>All bags in the order of their codes, numbers first; what they name and the car does not have is left out.</summary>
    public ValueList<Bag> Bags(Structure structure)
    {
        if (_bags.Count == 0)
            return [];
        var known = Pruning.Named(structure).Select(thing => thing.ToString()).ToHashSet();
        return _bags.Values.OrderBy(bag => int.TryParse(bag.Code, out var number) ? number : int.MaxValue)
            .ThenBy(bag => bag.Code, StringComparer.Ordinal)
            .Select(bag => bag.For.All(known.Contains) ? bag : bag with { For = bag.For.Where(known.Contains).ToValueList() })
            .ToValueList();
    }

    private string? Pack(BagPacked packed)
    {
        if (!BagCode.IsValid(packed.Code))
            return $"\"{packed.Code}\" is not a code of a bag";
        var bag = _bags.TryGetValue(packed.Code, out var known) && !known.IsEmpty ? known : new() { Code = packed.Code };
        _bags[packed.Code] = bag with
        {
            Holds = packed.Holds is { } holds ? [.. bag.Holds, holds] : bag.Holds,
            For = bag.For.Union(packed.For).ToValueList(),
            Place = packed.Place ?? bag.Place,
        };
        return null;
    }

    private string? Change(string code, Func<Bag, Bag> change)
    {
        if (!_bags.TryGetValue(code, out var bag))
            return $"there is no bag {BagCode.Shown(code)}";
        _bags[code] = change(bag);
        return null;
    }
}
