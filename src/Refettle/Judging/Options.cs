namespace Refettle.Judging;

/// <summary>What could be done with one part, each with its sums.</summary>
internal sealed class Options(Workbench bench, Part part, Condition condition)
{
    private readonly Craft _craft = Craft.Of(part);
    private readonly PartEstimate _known = bench.Estimate(part);
    private readonly Minutes? _access = condition.Worst is null or Severeness.Sound ? Minutes.Zero : bench.Access(part);

    public IEnumerable<VerdictOption> All() => [Keep(), RefurbishHere(), RefurbishOutside(), Replace(), Substitute()];

    private VerdictOption Keep() => condition.Worst switch
    {
        Severeness.Bad => Cannot(VerdictKind.Keep, DoneBy.Self, "it must not go back on as it is"),
        _ when _craft.LostWhenOff && bench.ComesOff(part) =>
            Cannot(VerdictKind.Keep, DoneBy.Self, "once off it does not go back on, as a rule"),
        Severeness.Worn => Option(VerdictKind.Keep, DoneBy.Self, 0, [Again()]),
        _ => Option(VerdictKind.Keep, DoneBy.Self, 0, []),
    };

    /// <summary>A worn part that stays will have to be got at again: half of that is counted.</summary>
    private Sum Again()
    {
        var later = ((_access ?? Minutes.Zero).Value + bench.Tries(part).Value + bench.Worth(Price().Money).Value) / 2;
        return new("worn: half of getting at it and renewing it later", new(Math.Min(Minutes.Max, later)), new(0), Origin.CommonPractice);
    }

    private VerdictOption RefurbishHere() => _known.Work is null && Hopeless() is { } why
        ? Cannot(VerdictKind.Refurbish, DoneBy.Self, why)
        : Worked(VerdictKind.Refurbish, DoneBy.Self, 0,
        [
            new("own work on the bench", _known.Work ?? _craft.Work, new(0), _known.Work is null ? Origin.CommonPractice : Origin.User),
            .. Paid("material", _known.Material, Origin.User),
        ]);

    /// <summary>Why the bench does not help as a rule. Who knows better enters his own time for it.</summary>
    private string? Hopeless() => !_craft.CanRefurbish ? "such parts are not put right on a home bench, as a rule"
        : condition.Beyond() is { Limit: { } limit }
        ? $"its {limit.What} is past the limit, and cleaning does not bring that back: enter your own work if you know what does"
        : null;

    private VerdictOption RefurbishOutside() => _known.OutsidePrice is not { } price
        ? Cannot(VerdictKind.Refurbish, DoneBy.OutsideShop, "no price of an outside shop is known")
        : Worked(VerdictKind.Refurbish, DoneBy.OutsideShop, _known.OutsideDays ?? LeadTimes.Outside,
            [.. Paid("outside shop", price, Origin.User)]);

    private VerdictOption Replace()
    {
        if (part.Scarcity is Scarcity.Unique or Scarcity.Discontinued && _known.Price is null)
            return Cannot(VerdictKind.Replace, DoneBy.Self,
                part.Scarcity == Scarcity.Unique ? "there is no other" : "no longer made, and no price of another one is known");
        var (money, says, origin) = Price();
        return Worked(VerdictKind.Replace, DoneBy.Self, _known.LeadDays ?? LeadTimes.Of(part.Scarcity),
            [.. Paid(says, money, origin), .. OtherSide(money)]);
    }

    private VerdictOption Substitute() => _known.SubstitutePrice is not { } price
        ? Cannot(VerdictKind.Substitute, DoneBy.Self, "nothing that would do instead is known")
        : Worked(VerdictKind.Substitute, DoneBy.Self, _known.LeadDays ?? LeadTimes.Of(Scarcity.Stocked),
        [
            .. Paid("substitute", price, Origin.User),
            .. _known.SubstituteWork is { } work ? [new Sum("making it fit", work, new(0), Origin.User)] : (IEnumerable<Sum>)[],
            .. OtherSide(price),
        ]);

    private (Money Money, string Says, Origin Origin) Price()
    {
        if (_known.Price is { } known)
            return (known, "another one", Origin.User);
        if (_known.SoldWith is { } with && bench.Standing.Parts.TryGetValue(with, out var whole) && whole.Price is { } dearer)
            return (dearer, $"another one, sold only with {whole.Name}", whole.Origin);
        return part.Price is { } price
            ? (price, "another one", part.Origin)
            : (bench.Car.Settings.UnknownPrice, "another one, price not known: the setting's", Origin.User);
    }

    private IEnumerable<Sum> OtherSide(Money price) => _craft.InPairs && bench.OtherSide(part) is { } other
        ? Paid($"the other side too: {other.Name}", price, Origin.CommonPractice)
            .Select(sum => sum with { Minutes = sum.Minutes + (bench.Access(other) ?? Minutes.Zero) })
        : [];

    private IEnumerable<Sum> Paid(string says, Money? money, Origin origin) =>
        money is { } amount ? [new(says, bench.Worth(amount), amount, origin)] : [];

    private VerdictOption Worked(VerdictKind kind, DoneBy by, decimal days, ValueList<Sum> sums)
    {
        if (_access is not { } access)
            return Cannot(kind, by, "it cannot come off with what is allowed");
        return Option(kind, by, days,
            [new(access == Minutes.Zero ? "comes off anyway, or is off" : "taking it off and putting it back, on top of what is planned",
                access, new(0), Origin.CommonPractice) { IsAccess = true }, .. Tries(access), .. sums]);
    }

    /// <summary>What removal may break moves the answer by the minutes that it is expected to take.</summary>
    private IEnumerable<Sum> Tries(Minutes access) => access > Minutes.Zero && bench.Tries(part) is { Value: > 0 } tries
        ? [new("its joints may be stuck: tries to expect, what may break included", tries, new(0), Origin.CommonPractice)
            { IsAccess = true }]
        : [];

    private VerdictOption Option(VerdictKind kind, DoneBy by, decimal days, ValueList<Sum> sums) =>
        new(kind, by, sums, days, bench.DaysLeft is { } left && days > left ? days - left : 0, null);

    private static VerdictOption Cannot(VerdictKind kind, DoneBy by, string why) => new(kind, by, [], 0, 0, why);
}
