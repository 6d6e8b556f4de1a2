namespace Refettle.Logbook;

/// <summary>Part numbers by part and joint, while a log is folded.</summary>
internal sealed class PositionNumbers
{
    private readonly SortedDictionary<string, PositionNumber> _byThing = new(StringComparer.Ordinal);

    /// <summary>An entry that is wrong in itself, or about what the car does not have, is not applied.</summary>
    public Applied Apply(StockHappening stock, StructureBuilder structure)
    {
        if (StockCheck.Of(stock).FirstOrDefault() is { } fault)
            return Applied.Not($"{fault.Place}: {fault.Found}");
        if ((stock as NumberAssigned)?.Thing is { } thing && !structure.Has(thing))
            return Applied.Not($"the car has no {thing}");
        if (stock is Reserved reserved && !structure.Has(reserved.Thing))
            return Applied.Not($"the car has no {reserved.Thing}");
        if (stock is PiecesWanted wanted && !structure.Has(wanted.Thing))
            return Applied.Not($"the car has no {wanted.Thing}");
        if (stock is NumberAssigned assigned)
            Assign(assigned);
        return Applied.Fully;
    }

    private void Assign(NumberAssigned assigned)
    {
        if (assigned.Number is { } number)
            _byThing[assigned.Thing] = new(assigned.Thing, number, assigned.Count);
        else
            _byThing.Remove(assigned.Thing);
    }

    /// <summary>Drops the numbers of what is not there any more.</summary>
    public void Forget(StructureBuilder structure) => _byThing.Forget(structure);

    /// <summary>Those of things that the mended structure still has.</summary>
    public ValueList<PositionNumber> All(Structure structure)
    {
        var there = CarThings.Of(structure);
        return _byThing.Values.Where(number => there.Contains(number.Thing)).ToValueList();
    }
}
