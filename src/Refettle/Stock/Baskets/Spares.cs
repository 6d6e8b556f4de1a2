using Refettle.Bench.Chance;

namespace Refettle.Stock.Baskets;

/// <summary>How many spares to have for a joint whose pieces may break.</summary>
/// <param name="Says">The chance with its origin, and the two costs that were weighed.</param>
public sealed record SpareAdvice(int Count, string Says);

/// <summary>Weighs a missing piece against one too many: the newsvendor's quantity.</summary>
public static class Spares
{
    /// <summary>The chance that a clip breaks on being taken off, where its number says nothing: at least one in a job of
    /// trim. Common practice, no source.</summary>
    public const double ClipBreaks = 0.2;

    /// <summary>Minutes that a missing piece costs: a trip for it, or the evening ended early. A choice of the program.</summary>
    public static Minutes TripFor { get; } = new(60);

    /// <summary>Money that a piece too many costs where no price is known.</summary>
    public static Money UnknownPiece { get; } = new(1);

    /// <summary>None for a joint whose pieces are not known to break.</summary>
    /// <param name="pieces">1 or more.</param>
    public static SpareAdvice For(Shelf shelf, Joint joint, string? number, int pieces, Car car)
    {
        var known = number is null ? null : shelf.Number(number);
        var (chance, origin) = known?.Breaks is { } breaks ? ((double)breaks, Word(known.Origin))
            : joint.Kind == JointKind.Clip ? (ClipBreaks, "common practice, no source")
            : (0, "");
        if (chance <= 0)
            return new(0, "");
        var over = PriceOf(shelf, number, car.Currency) ?? UnknownPiece;
        var shortage = (double)(TripFor.Value / 60 * car.Settings.PerHour.Amount);
        var ratio = Newsvendor.Ratio(shortage, Math.Max(0.01, (double)over.Amount));
        var count = chance >= 1 ? pieces : Newsvendor.ForBinomial(pieces, chance, ratio);
        return new(count,
            $"each breaks with a chance of {chance:0%} ({origin}): so many are enough with {ratio:0%}, since one missing costs {TripFor} of yours and one too many {over} {car.Currency}");
    }

    /// <summary>The lowest price of one among the suppliers' lists in this currency; null when none names it.</summary>
    public static Money? PriceOf(Shelf shelf, string? number, string currency) =>
        shelf.Lists.Where(list => list.Currency == currency).SelectMany(list => list.Offers)
        .Where(offer => offer.Number == number && offer.Each is not null).Select(offer => offer.Each).OrderBy(price => price!.Value.Amount)
        .FirstOrDefault();

    private static string Word(Origin origin) => origin switch
    {
        Origin.User => "your judgement",
        Origin.Measured => "measured",
        Origin.Maker => "the maker's",
        _ => "common practice, no source",
    };
}
