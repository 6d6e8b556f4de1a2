using NodaTime;

namespace Refettle.Coating;

/// <summary>Where a part stands between two coats.</summary>
public enum CoatStanding
{
    /// <summary>No coat is on yet.</summary>
    NotBegun,

    /// <summary>The coat before is too fresh.</summary>
    TooEarly,

    /// <summary>The next coat may go on.</summary>
    Open,

    /// <summary>The longest time to the next coat is over.</summary>
    Late,

    /// <summary>The sheet's times are not entered.</summary>
    NotKnown,

    /// <summary>All coats are on.</summary>
    Done,
}

/// <summary>A part and what is due on it.</summary>
/// <param name="Next">The product that is next; null when all are on.</param>
/// <param name="Opens">From then on; null when nothing is to be waited for, or it is not known.</param>
/// <param name="Closes">Until then without abrading; null when there is no end or none is entered.</param>
/// <param name="Handle">When it can be handled; null while coats are to come, or when the sheet's time
/// or its temperature is not entered.</param>
/// <param name="WhenLate">What the sheet says to do; null when it is not late, or not entered.</param>
public sealed record DueCoat(
    string Part, CoatStanding Standing, string? Next, LocalDateTime? Opens, LocalDateTime? Closes, LocalDateTime? Handle,
    LocalDateTime? FullCure, string? WhenLate)
{
    /// <summary>On some of the days that these times are worked out for nothing is known of the air: the sheet's
    /// own temperature stands for them.</summary>
    public bool IsUnsure { get; init; }
}

/// <summary>What is due on which part.</summary>
public static class DueCoats
{
    /// <summary>The most pressing first.</summary>
    public static ValueList<DueCoat> Of(Car car, LocalDateTime now) => PartProgress.All(car.Coating).Select(part => Of(car, part, now))
        .OrderBy(due => due.Standing == CoatStanding.Late ? 0 : 1).ThenBy(due => due.Closes ?? LocalDateTime.MaxIsoValue)
        .ThenBy(due => due.Standing == CoatStanding.Done).ThenBy(due => due.Part, StringComparer.Ordinal).ToValueList();

    /// <summary>Where it stands, in words; what its sheet says when it is late.</summary>
    public static string Words(DueCoat due) =>
        Standing(due)
        + (due.IsUnsure ? "; unsure: the air is not known on every day, the sheet's own temperature stands for the others" : "");

    private static string Standing(DueCoat due) => due.Standing switch
    {
        CoatStanding.NotBegun => "no coat yet",
        CoatStanding.TooEarly => "too fresh",
        CoatStanding.Open => "may be coated now",
        CoatStanding.Late => due.WhenLate is { } late
            ? $"late; the sheet says: {late}"
            : "late; look up on its sheet what to do with an aged coat",
        CoatStanding.NotKnown => "the sheet's window is not entered",
        _ => $"all coats are on{(due.Handle is { } handle ? $"; handle from {DayWords.Moment(handle)}" : "")}{(due.FullCure is { } cure ? $", cured {DayWords.Moment(cure)}" : "")}",
    };

    private static DueCoat Of(Car car, PartProgress part, LocalDateTime now)
    {
        var next = part.IsDone ? null : part.System.Stages[part.Stage].Product;
        if (part.Last is not { } last || car.Coating.Product(last.Product) is not { } product)
            return new(part.Part, CoatStanding.NotBegun, next, null, null, null, null, null);
        if (part.IsDone)
        {
            var (handle, cure) = (Cured(FigureKind.Handle), Cured(FigureKind.FullCure));
            return new(part.Part, CoatStanding.Done, null, null, null, handle?.Time, cure?.Time, null)
            { IsUnsure = handle?.IsUnsure == true || cure?.IsUnsure == true };
        }

        if (RecoatSpan.After(car.Calendar, product, last.At, last.Celsius) is not { } span)
            return new(part.Part, CoatStanding.NotKnown, next, null, null, null, null, null);
        var standing = now < span.Opens ? CoatStanding.TooEarly : now > span.Closes ? CoatStanding.Late : CoatStanding.Open;
        return new(part.Part, standing, next, span.Opens, span.Closes, null, null, standing == CoatStanding.Late ? product.WhenLate : null)
        { IsUnsure = span.IsUnsure };

        CuredAt? Cured(FigureKind kind) => RecoatSpan.Cured(car.Calendar, product, kind, last.At, last.Celsius);
    }
}
