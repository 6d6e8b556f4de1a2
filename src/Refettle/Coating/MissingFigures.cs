namespace Refettle.Coating;

/// <summary>What a plan needs of a product and nobody has entered.</summary>
public static class MissingFigures
{
    private static readonly FigureKind[] _always =
        [FigureKind.PotLife, FigureKind.Handle, FigureKind.FullCure, FigureKind.At, FigureKind.LeastAir, FigureKind.MostAir,
            FigureKind.MostHumidity, FigureKind.DewMargin, FigureKind.WetFilm, FigureKind.DryFilm, FigureKind.Solids];

    /// <summary>Each with the words to look for on the data sheet.</summary>
    public static ValueList<MissingFigure> Of(CoatingProduct product)
    {
        var missing = _always.Where(kind => product.Figure(kind) is null && !IsCovered(product, kind)).Select(kind => FigureKinds.Of(kind))
            .Select(ask => new MissingFigure(ask.Key, ask.Says, ask.LookFor)).ToList();
        if (product.Recoat.Count == 0)
            missing.Insert(0,
                new("recoat", "shortest and longest time to the next coat, with its temperature",
                    "recoat window, overcoating interval, minimum and maximum"));
        else if (product.Recoat.Any(row => row is { ClosesHours: null, HasNoEnd: false }))
            missing.Insert(0,
                new("recoat", "longest time to the next coat",
                    "overcoating interval, maximum; write open if the sheet says there is none"));
        if (product.Mix is null)
            missing.Add(new("mix", "how it is mixed", $"mixing ratio; write {CoatingProduct.OnePack} if there is none"));
        if (product.WhenLate is null && product.Recoat.Any(row => row.ClosesHours is not null))
            missing.Add(new("late", "what to do when the longest time to the next coat is over",
                "surface preparation of aged coats, abrade"));
        if (product.Hazards.Count == 0)
            missing.Add(new("hazards", "what is in it", "the safety sheet, sections 2 and 3: isocyanate, solvent, acid, epoxy resin"));
        return missing.ToValueList();
    }

    /// <summary>Wet film follows from dry and solids; wax and converters that give a coverage need no solids.</summary>
    private static bool IsCovered(CoatingProduct product, FigureKind kind) => kind switch
    {
        FigureKind.WetFilm => product.Figure(FigureKind.DryFilm) is not null && product.Figure(FigureKind.Solids) is not null,
        FigureKind.Solids or FigureKind.DryFilm => product.Figure(FigureKind.Coverage) is not null,
        FigureKind.PotLife => product.Mix == CoatingProduct.OnePack,
        FigureKind.At => product.Figure(FigureKind.Handle) is null && product.Figure(FigureKind.FullCure) is null,
        _ => false,
    };
}

/// <summary>A figure that is not entered.</summary>
/// <param name="Key">As it is typed.</param>
/// <param name="LookFor">The words under which data sheets have it.</param>
public sealed record MissingFigure(string Key, string Says, string LookFor);
