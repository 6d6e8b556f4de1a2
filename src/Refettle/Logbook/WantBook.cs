namespace Refettle.Logbook;

/// <summary>New pieces that were asked for by word, while a log is folded.</summary>
/// <param name="car">The car whose log it is.</param>
internal sealed class WantBook(string car)
{
    private readonly SortedDictionary<string, int> _byThing = new(StringComparer.Ordinal);

    /// <summary>Pieces that go onto the place afterwards are the wanted ones.</summary>
    public void Apply(StockHappening stock)
    {
        if (stock is PiecesWanted wanted)
            _byThing[wanted.Thing] = wanted.Count;
        else if (stock is PiecesMoved moved && moved.To.Position() is { } to && to.Car == car
            && _byThing.TryGetValue(to.Thing, out var left))
            _byThing[to.Thing] = Math.Max(0, left - moved.Count);
    }

    /// <summary>Drops the wants of what is not there any more: should it come back, nobody has asked for it again.</summary>
    public void Forget(StructureBuilder structure) => _byThing.Forget(structure);

    /// <summary>Those of things that the mended structure still has.</summary>
    public ValueList<Want> All(Structure structure)
    {
        var there = CarThings.Of(structure);
        return _byThing.Where(want => want.Value > 0 && there.Contains(want.Key)).Select(want => new Want(want.Key, want.Value))
            .ToValueList();
    }
}
