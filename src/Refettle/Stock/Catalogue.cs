using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Part numbers and suppliers' lists, put together from the entries of all cars.</summary>
internal sealed class Catalogue
{
    private readonly List<Fault> _faults = [];
    private readonly Dictionary<string, PartNumber> _byId = [];

    public Catalogue(IReadOnlyCollection<StockLine> lines)
    {
        foreach (var number in lines.Where(line => line.Happening is NumberDescribed)
            .GroupBy(line => ((NumberDescribed)line.Happening).Number.Id))
            _byId[number.Key] = Newest(number.Key, [.. number]);
        Lists = lines.Select(line => (line.Entry, Listed: line.Happening as OffersListed)).Where(line => line.Listed is not null)
            .GroupBy(line => line.Listed!.Supplier)
            .Select(list => list.OrderBy(line => line.Listed!.On).ThenBy(line => line.Entry).Last().Listed!)
            .OrderBy(list => list.Supplier, StringComparer.Ordinal)
            .Select(list => new SupplierList(list.Supplier, list.Currency, list.On, list.Offers)).ToValueList();
        Numbers = _byId.Values.OrderBy(number => number.Id, StringComparer.Ordinal).ToValueList();
        _faults.AddRange(Circles());
    }

    public ValueList<PartNumber> Numbers { get; }

    public ValueList<SupplierList> Lists { get; }

    public IEnumerable<Fault> Faults => _faults;

    public DateOnly? UseBy(Batch batch) => Age.UseBy(batch, _byId.GetValueOrDefault(batch.Number));

    /// <summary>The description that no other replaces. Two that did not know of each other: the one written
    /// last by identifier, and a note.</summary>
    private PartNumber Newest(string id, List<StockLine> all)
    {
        var replaced = all.SelectMany(line => ((NumberDescribed)line.Happening).Instead).ToHashSet();
        var left = all.Where(line => !replaced.Contains(line.Entry)).OrderBy(line => line.Entry).ToList();
        if (left.Select(line => ((NumberDescribed)line.Happening).Number).Distinct().Count() > 1)
            _faults.Add(new($"number {id}", "it was described differently in two places that did not know of each other",
                "Describe it once more; that replaces both.")
            { Severity = Severity.Note });
        return ((NumberDescribed)(left.Count > 0 ? left : all)[^1].Happening).Number;
    }

    /// <summary>Numbers that supersede each other in a circle, or contain or are made from themselves.</summary>
    private IEnumerable<Fault> Circles() =>
        from number in Numbers
        where Reaches(number.Id, one => one.SupersededBy is { } next ? [next] : [])
            || Reaches(number.Id, one => one.Contains.Concat(one.MadeFrom).Select(piece => piece.Number))
        select new Fault($"number {number.Id}", "it leads back to itself", "Mend what supersedes, contains or goes into what.");

    private bool Reaches(string start, Func<PartNumber, IEnumerable<string>> next)
    {
        var seen = new HashSet<string>();
        var open = new Stack<string>([start]);
        while (open.TryPop(out var id))
        {
            foreach (var further in _byId.TryGetValue(id, out var number) ? next(number) : [])
            {
                if (further == start)
                    return true;
                if (seen.Add(further))
                    open.Push(further);
            }
        }

        return false;
    }
}

/// <summary>When rubber is too old.</summary>
public static class Age
{
    /// <summary>The last day it may be fitted: as marked, else from its making and the shelf life of its number; null when it does not
    /// age or its making is not known.</summary>
    public static DateOnly? UseBy(Batch batch, PartNumber? number) =>
        batch.UseBy ?? (number?.ShelfLifeMonths is { } months ? batch.Made?.AddMonths(months) : null);
}
