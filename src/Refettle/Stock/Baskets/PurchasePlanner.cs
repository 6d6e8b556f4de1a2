using Refettle.Stock.Netting;

namespace Refettle.Stock.Baskets;

/// <summary>What is missing, as orders: under which number, of whom, how many, by when.</summary>
/// <param name="currency">Of the cars that it is for.</param>
internal sealed class PurchasePlanner(Shelf shelf, string currency, DateOnly today, double confidence)
{
    /// <summary>Days that a supplier takes who names none. A default of the program, not a fact.</summary>
    public const int UnknownLead = 10;

    private sealed record Missing(string Number, int Count, DateOnly? By, ValueList<string> For, int? LeadDays);

    private readonly Sources _sources = new(shelf, currency);

    /// <summary>For cars that count in different currencies each by itself: no price says which of the two costs less.</summary>
    public static ValueList<Purchase> Of(Shelf shelf, ValueList<Served> served, DateOnly today, double confidence) => served
        .Where(line => line is { Missing: > 0, Need.Number: not null }).GroupBy(line => line.Need.Currency)
        .SelectMany(lines => new PurchasePlanner(shelf, lines.Key, today, confidence).Of(lines))
        .OrderBy(purchase => purchase.OrderBy ?? DateOnly.MaxValue).ThenBy(purchase => purchase.Number, StringComparer.Ordinal)
        .ToValueList();

    private IEnumerable<Purchase> Of(IEnumerable<Served> served)
    {
        var family = new Family(shelf.Numbers);
        var missing = served.Select(line => new Missing(Sold(family, line.Need.Number!), line.Missing, line.Need.By,
            [$"{line.Need.Car} {line.Need.Thing}"], line.Need.LeadDays)).ToList();
        var totals = missing.GroupBy(one => one.Number).OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => new NumberCount(group.Key, group.Sum(one => one.Count))).ToValueList();
        var choice = new KitChoice(totals, Kits(), _sources.Price, IsKitOnly).Best();
        return choice.Kits.Select(kit => Kit(kit, missing))
            .Concat(choice.Singles.Concat(choice.Unsold).Select(single => Single(single, missing)));
    }

    private bool IsKitOnly(string number) => shelf.Number(number)?.KitOnly ?? false;

    /// <summary>Kits that somebody sells, and those that are the only source of something.</summary>
    private ValueList<PartNumber> Kits() => shelf.Numbers
        .Where(number => number.Contains.Count > 0
            && (_sources.Cheapest(number.Id, 1) is not null || number.Contains.Any(one => IsKitOnly(one.Number)))).ToValueList();

    /// <summary>The current number; where only an older one that is the same part is offered, that.</summary>
    private string Sold(Family family, string number)
    {
        var current = family.Current(number);
        return _sources.Cheapest(current, 1) is not null ? current
            : family.ServingFor(number)
                .FirstOrDefault(one => one.Caveat.Length == 0 && _sources.Cheapest(one.Number, 1) is not null)?.Number ?? current;
    }

    private Purchase Single(NumberCount single, List<Missing> missing) =>
        Planned(single.Number, [.. Last(missing.Where(one => one.Number == single.Number), single.Count)], []);

    /// <summary>A kit is needed as early as the first thing in it that it covers.</summary>
    private Purchase Kit(NumberCount kit, List<Missing> missing)
    {
        var inside = shelf.Number(kit.Number)!.Contains;
        var covers = missing.Where(one => inside.Any(content => content.Number == one.Number)).ToList();
        var contents = inside.Select(content => content with
        { Count = Math.Min(content.Count * kit.Count, covers.Where(one => one.Number == content.Number).Sum(one => one.Count)) })
            .Where(content => content.Count > 0);
        var need = new Missing(kit.Number, kit.Count, covers.Min(one => one.By), covers.SelectMany(one => one.For).ToValueList(),
            covers.Max(one => one.LeadDays));
        return Planned(kit.Number, [need], contents.ToValueList());
    }

    /// <summary>Kits cover the first days; what is bought by the piece serves the last ones.</summary>
    private static IEnumerable<Missing> Last(IEnumerable<Missing> missing, int count)
    {
        foreach (var one in missing.OrderByDescending(one => one.By ?? DateOnly.MaxValue).ThenBy(one => one.For[0], StringComparer.Ordinal))
        {
            var taken = Math.Min(count, one.Count);
            count -= taken;
            if (taken > 0)
                yield return one with { Count = taken };
        }
    }

    private Purchase Planned(string number, List<Missing> needs, ValueList<NumberCount> contents)
    {
        var needed = needs.Sum(one => one.Count);
        var source = _sources.Cheapest(number, needed);
        var (named, lead, says) = Lead(source, needs.Max(one => one.LeadDays));
        var (count, release) = Netted(needs, Sources.Lot(source), lead);
        var first = needs.Min(one => one.By);
        return new(number, shelf.NameOf(number), needed, count, source?.Supplier, source?.Currency,
            source?.Offer.Each is { } each ? new Money(each.Amount * count) : null,
            first, release, release is { } day ? Math.Max(0, today.DayNumber - day.DayNumber) : 0, says + _sources.Apart(source),
            needs.SelectMany(one => one.For).Distinct().Order(StringComparer.Ordinal).ToValueList(), contents)
        {
            NamedDays = named,
            Days = lead,
            Origin = source?.Offer.LeadDays is null && needs.All(one => one.LeadDays is null) ? Origin.Default : Origin.User
        };
    }

    /// <summary>Nets the needs day by day; what has no day comes last.</summary>
    private (int Count, DateOnly? Release) Netted(List<Missing> needs, LotRule lot, int lead)
    {
        int Day(Missing one) =>
            one.By is { } by
                ? Math.Max(0, by.DayNumber - today.DayNumber)
                : needs.Max(other => other.By is { } day ? Math.Max(0, day.DayNumber - today.DayNumber) : 0);
        var gross = new int[needs.Max(Day) + 1];
        foreach (var one in needs)
            gross[Day(one)] += one.Count;
        var plan = NetRequirements.Of(new(ValueList.Create<int>(gross), ValueList.Create<int>(new int[gross.Length]), 0, lead, lot));
        var count = plan.Receipts.Sum();
        if (needs.All(one => one.By is null))
            return (count, null);
        var first = plan.PastDue.Count > 0
            ? -plan.PastDue.Max(late => late.PeriodsBefore)
            : Enumerable.Range(0, gross.Length).First(day => plan.Releases[day] > 0);
        return (count, today.AddDays(first));
    }

    private (int Named, int Days, string Says) Lead(Source? source, int? estimated)
    {
        var named = source?.Offer.LeadDays ?? estimated ?? UnknownLead;
        var record = SupplierRecord.Of(shelf, source?.Supplier ?? "a supplier", today);
        var days = (int)Math.Ceiling(named * record.Factor(confidence));
        var whose = source?.Offer.LeadDays is not null
            ? $"{named} days named"
            : estimated is not null
            ? $"{named} days by your estimate"
            : $"{named} days by default, none are named";
        return (named, days, $"{days} days with {confidence:0%}: {whose}; {record.Says}");
    }
}
