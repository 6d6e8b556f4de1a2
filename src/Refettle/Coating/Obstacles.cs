using NodaTime;

namespace Refettle.Coating;

/// <summary>Why a part cannot be planned, and what would help.</summary>
internal static class Obstacles
{
    /// <summary>What has to be entered first; null when nothing is missing that the plan cannot do without.</summary>
    public static UnplannedCoat? Unsaid(RowBook book, PartProgress part)
    {
        var before = part.ToCome.SkipLast(1).Select(coat => coat.Product).Concat(part.Last is { } last ? [last.Product] : []);
        if (before.Select(book.Product).FirstOrDefault(product => product.Recoat.Count == 0) is { } unsaid)
            return new(part.Part, part.Stage, unsaid.Id, $"when the next coat may go on {unsaid.Name} is not entered",
                $"Look up the recoat window, minimum and maximum, on its data sheet: refettle product set {unsaid.Id} recoat=…");
        if (part.Last is { } late && book.IsLate(part) && book.Product(late.Product) is { WhenLate: null } product)
            return new(part.Part, part.Stage, product.Id,
                $"its coat of {product.Name} was to be coated over by {DayWords.Moment(book.Since(part)!.Closes!.Value)}, and what its sheet says then is not entered",
                $"Look up what to do with an aged coat: refettle product set {product.Id} late=…");
        return null;
    }

    /// <param name="coat">The first that no occasion is left for, counted from the next.</param>
    public static UnplannedCoat Stuck(RowBook book, CoatingQuestion question, PartProgress part, int coat)
    {
        var (stage, product, _) = part.ToCome.ElementAt(coat);
        var last = question.From.Date.PlusDays(question.Days);
        if (book.Damp(product) is { } damp)
            return new(part.Part, stage, product, $"until {DayWords.Day(last)} {damp}",
                "Heat or dry the place and say so (refettle climate), look further ahead (--days), or take another product.");
        if (book.IsAway(product))
            return new(part.Part, stage, product,
                $"until {DayWords.Day(last)} {book.Corner.Names} is not there when you are and the air is fit, or not until the coat is dry", "Have it longer or on other days (refettle facility add), or make time while it is there (refettle spell add).");
        var fit = book.Corner.ComesAndGoes ? $"fit air and {book.Corner.Names} there" : "fit air";
        return coat == 0 && book.Since(part) is { } span
            ? new(part.Part, stage, product, $"it may be coated {Words(span)}, and no spell with {fit} lies in that",
                "Make time in it (refettle spell add), warm and dry the place, or follow what the sheet says of aged coats.")
            : new(part.Part, stage, product, $"until {DayWords.Day(last)} no spell with {fit} lies in the window after the coat before",
                "Add a spell nearer to the coat before, warm and dry the place, or look further ahead (--days).");
    }

    /// <summary>The part could be planned alone.</summary>
    public static UnplannedCoat NoRoom(RowBook book, CoatingQuestion question, PartProgress part)
    {
        var (load, (stage, product, _)) = (SprayRoom.Load(question.Car, part.Part), part.ToCome.First());
        return book.Room.Holds(load)
            ? new(part.Part, stage, product,
                $"no room was found for it beside the other parts until {DayWords.Day(question.From.Date.PlusDays(question.Days))}: {SprayRoom.Words(book.Room)} fit into the spray corner at one time, and each stays until it is dry", "Add spells, look further ahead (--days), or make room (refettle facility add).")
            : new(part.Part, stage, product,
                $"it is more than fits into the spray corner at one time: {SprayRoom.Words(new(load.Pieces, load.SquareMetres))}, and {SprayRoom.Words(book.Room)} fit in", "Enter more room (refettle facility add), or coat it by hand and enter the coats (refettle coat).");
    }

    private static string Words(RecoatSpan span) =>
        $"from {DayWords.Moment(span.Opens)}{(span.Closes is { } closes ? $" to {DayWords.Moment(closes)}" : "")}";
}
