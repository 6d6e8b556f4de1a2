using Refettle.Stock.Netting;

namespace Refettle.Stock.Baskets;

/// <summary>What is missing, as orders: under which number, of whom, how many, by when.</summary>
internal static class PurchasePlanner
{
    /// <summary>Days that a supplier takes who names none. A default of the program, not a fact.</summary>
    public const int UnknownLead = 10;

    private sealed record Missing(string Number, int Count, DateOnly? By, ValueList<string> For, int? LeadDays);

    private sealed record Source(string Supplier, string Currency, Offer Offer);

    public static ValueList<Purchase> Of(Shelf shelf, ValueList<Served> served, DateOnly today, double confidence)
    {
        var family = new Family(shelf.Numbers);
        var missing = served.Where(line => line is { Missing: > 0, Need.Number: not null })
            .Select(line => new Missing(Sold(shelf, family, line.Need.Number!), line.Missing, line.Need.By, [$"{line.Need.Car} {line.Need.Thing}"], line.Need.LeadDays)).ToList();
        var totals = missing.GroupBy(one => one.Number).OrderBy(group => group.Key, StringComparer.Ordinal).Select(group => new NumberCount(group.Key, group.Sum(one => one.Count))).ToValueList();
        bool IsKitOnly(string number) => shelf.Number(number)?.KitOnly ?? false;
        var choice = new KitChoice(totals, Kits(shelf, IsKitOnly), (number, count) => Price(shelf, number, count), IsKitOnly).Best();
        var covered = choice.Kits.Select(kit => Kit(shelf, kit, missing, today, confidence));
        var singles = choice.Singles.Concat(choice.Unsold).Select(single => Single(shelf, single, missing, today, confidence));
        return covered.Concat(singles).OrderBy(purchase => purchase.OrderBy ?? DateOnly.MaxValue).ThenBy(purchase => purchase.Number, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>Kits that somebody sells, and those that are the only source of something: what has no price costs nothing, and would win over all that has one.</summary>
    private static ValueList<PartNumber> Kits(Shelf shelf, Func<string, bool> isKitOnly) => shelf.Numbers
        .Where(number => number.Contains.Count > 0 && (Cheapest(shelf, number.Id, 1) is not null || number.Contains.Any(one => isKitOnly(one.Number)))).ToValueList();

    /// <summary>The current number; where only an older one that is the same part is offered, that.</summary>
    private static string Sold(Shelf shelf, Family family, string number)
    {
        var current = family.Current(number);
        return Cheapest(shelf, current, 1) is not null ? current
            : family.ServingFor(number).FirstOrDefault(one => one.Caveat.Length == 0 && Cheapest(shelf, one.Number, 1) is not null)?.Number ?? current;
    }

    private static Purchase Single(Shelf shelf, NumberCount single, List<Missing> missing, DateOnly today, double confidence) =>
        Planned(shelf, single.Number, [.. Last(missing.Where(one => one.Number == single.Number), single.Count)], [], today, confidence);

    /// <summary>A kit is needed as early as the first thing in it that it covers.</summary>
    private static Purchase Kit(Shelf shelf, NumberCount kit, List<Missing> missing, DateOnly today, double confidence)
    {
        var inside = shelf.Number(kit.Number)!.Contains;
        var covers = missing.Where(one => inside.Any(content => content.Number == one.Number)).ToList();
        var contents = inside.Select(content => content with { Count = Math.Min(content.Count * kit.Count, covers.Where(one => one.Number == content.Number).Sum(one => one.Count)) }).Where(content => content.Count > 0);
        var need = new Missing(kit.Number, kit.Count, covers.Min(one => one.By), covers.SelectMany(one => one.For).ToValueList(), covers.Max(one => one.LeadDays));
        return Planned(shelf, kit.Number, [need], contents.ToValueList(), today, confidence);
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

    private static Purchase Planned(Shelf shelf, string number, List<Missing> needs, ValueList<NumberCount> contents, DateOnly today, double confidence)
    {
        var needed = needs.Sum(one => one.Count);
        var source = Cheapest(shelf, number, needed);
        var (named, lead, says) = Lead(shelf, source, needs.Max(one => one.LeadDays), today, confidence);
        var lot = source is null ? LotRule.LotForLot : new LotRule(source.Offer.Minimum, source.Offer.Multiple);
        var (count, release) = Netted(needs, lot, lead, today);
        var first = needs.Min(one => one.By);
        return new(number, shelf.NameOf(number), needed, count, source?.Supplier, source?.Currency, source?.Offer.Each is { } each ? new Money(each.Amount * count) : null,
            first, release, release is { } day ? Math.Max(0, today.DayNumber - day.DayNumber) : 0, says, needs.SelectMany(one => one.For).Distinct().Order(StringComparer.Ordinal).ToValueList(), contents)
        { NamedDays = named, Days = lead, Origin = source?.Offer.LeadDays is null && needs.All(one => one.LeadDays is null) ? Origin.Default : Origin.User };
    }

    /// <summary>Nets the needs day by day; what has no day comes last.</summary>
    private static (int Count, DateOnly? Release) Netted(List<Missing> needs, LotRule lot, int lead, DateOnly today)
    {
        int Day(Missing one) => one.By is { } by ? Math.Max(0, by.DayNumber - today.DayNumber) : needs.Max(other => other.By is { } day ? Math.Max(0, day.DayNumber - today.DayNumber) : 0);
        var gross = new int[needs.Max(Day) + 1];
        foreach (var one in needs)
            gross[Day(one)] += one.Count;
        var plan = NetRequirements.Of(new(ValueList.Create<int>(gross), ValueList.Create<int>(new int[gross.Length]), 0, lead, lot));
        var count = plan.Receipts.Sum();
        if (needs.All(one => one.By is null))
            return (count, null);
        var first = plan.PastDue.Count > 0 ? -plan.PastDue.Max(late => late.PeriodsBefore) : Enumerable.Range(0, gross.Length).First(day => plan.Releases[day] > 0);
        return (count, today.AddDays(first));
    }

    private static (int Named, int Days, string Says) Lead(Shelf shelf, Source? source, int? estimated, DateOnly today, double confidence)
    {
        var named = source?.Offer.LeadDays ?? estimated ?? UnknownLead;
        var record = SupplierRecord.Of(shelf, source?.Supplier ?? "a supplier", today);
        var days = (int)Math.Ceiling(named * record.Factor(confidence));
        var whose = source?.Offer.LeadDays is not null ? $"{named} days named" : estimated is not null ? $"{named} days by your estimate" : $"{named} days by default, none are named";
        return (named, days, $"{days} days with {confidence:0%}: {whose}; {record.Says}");
    }

    private static Money? Price(Shelf shelf, string number, int count) => Cheapest(shelf, number, count) is { Offer.Each: { } each } source
        ? new Money(each.Amount * new LotRule(source.Offer.Minimum, source.Offer.Multiple).Size(count)) : null;

    /// <summary>Prices in different currencies are not compared: a list in another currency than the first counts after it.</summary>
    private static Source? Cheapest(Shelf shelf, string number, int count) => shelf.Lists
        .SelectMany(list => list.Offers.Where(offer => offer.Number == number).Select(offer => new Source(list.Supplier, list.Currency, offer)))
        .OrderBy(source => source.Currency == shelf.Lists[0].Currency ? 0 : 1)
        .ThenBy(source => source.Offer.Each is { } each ? each.Amount * new LotRule(source.Offer.Minimum, source.Offer.Multiple).Size(count) : decimal.MaxValue)
        .ThenBy(source => source.Offer.LeadDays ?? int.MaxValue).ThenBy(source => source.Supplier, StringComparer.Ordinal).FirstOrDefault();
}
