namespace Refettle.Logbook;

/// <summary>Whether what is said of coatings may be written into a car's log.</summary>
internal static class CoatingCheck
{
    private const int MostWords = 500;
    private const int MostStages = 12;
    private const int MostCoats = 10;

    /// <summary>All faults of a happening about coating; none for others.</summary>
    public static IEnumerable<Fault> Of(Car car, Happening happening) => happening switch
    {
        ProductDescribed described => Product(described.Product),
        CoatingSystemDescribed described => System(car, described.System),
        CoatingChosen chosen => Chosen(car, chosen),
        CoatApplied applied => Applied(car, applied.Coat),
        KeptBare bare => Part(car, bare.Spot.Part).Concat(Words("bare", bare.Spot.Spot)).Concat(Optional("bare", bare.Spot.Why)),
        _ => [],
    };

    private static IEnumerable<Fault> Product(CoatingProduct product)
    {
        var place = $"product {product.Id}";
        foreach (var fault in Named("product", product.Id).Concat(Words(place, product.Name))
            .Concat(new[] { product.Sheet, product.Mix, product.WhenLate }.SelectMany(words => Optional(place, words))))
            yield return fault;
        foreach (var figure in product.Figures)
        {
            var ask = FigureKinds.Of(figure.Kind);
            if (figure.Value < ask.Least || figure.Value > ask.Most)
                yield return new($"{place} {ask.Key}", $"it is {figure.Value:0.##} {ask.Unit}",
                    $"Give {ask.Least:0.##} to {ask.Most:0.##} {ask.Unit}.");
        }

        if (product.Figures.Select(figure => figure.Kind).Distinct().Count() < product.Figures.Count)
            yield return new(place, "a figure is given twice", "Give each once.");
        if (product.Figure(FigureKind.LeastAir) >= product.Figure(FigureKind.MostAir))
            yield return new(place, "the coldest air is not below the warmest", "Exchange least-air and most-air.");
        if (product.Figures.Concat<object>(product.Recoat).Any(IsMakers) && string.IsNullOrWhiteSpace(product.Sheet))
            yield return new(place, "figures of a data sheet without the sheet",
                "Name it with its issue: \"sheet=PDS 12, issue 3\". Figures of your own or from common practice need none (--by me, --by practice).");
        if (product.Hazards is { Count: > 1 } hazards && hazards.Contains(CoatingHazard.NoneNamed))
            yield return new(place, "hazards are named, and none as well", "Leave none-named out.");
        foreach (var fault in Rows(place, product.Recoat))
            yield return fault;
    }

    private static bool IsMakers(object figure) => figure is SheetFigure { Origin: Origin.Maker } or RecoatRow { Origin: Origin.Maker };

    private static IEnumerable<Fault> Rows(string place, ValueList<RecoatRow> rows)
    {
        foreach (var row in rows)
        {
            if (row.Celsius is < -30 or > 80 || row.OpensHours is < 0 or > 10_000 || row.ClosesHours is < 0 or > 100_000)
                yield return new($"{place} recoat", $"{Window(row)} at {row.Celsius:0.#} °C",
                    "Give -30 to 80 °C, 0 to 10000 h for the shortest and up to 100000 h for the longest time.");
            if (row.ClosesHours <= row.OpensHours)
                yield return new($"{place} recoat", $"the window at {row.Celsius:0.#} °C closes before it opens",
                    "Give the shortest time first: recoat=16h..7d@20C.");
            if (row is { HasNoEnd: true, ClosesHours: not null })
                yield return new($"{place} recoat", $"the window at {row.Celsius:0.#} °C has an end and none", "Give one of them.");
        }

        if (rows.Select(row => row.Celsius).Distinct().Count() < rows.Count)
            yield return new($"{place} recoat", "two rows are for one temperature", "Give each temperature once.");
    }

    private static string Window(RecoatRow row) => row.ClosesHours is { } closes
        ? $"{row.OpensHours:0.##} to {closes:0.##} h"
        : $"{row.OpensHours:0.##} h or longer";

    private static IEnumerable<Fault> System(Car car, CoatingSystem system)
    {
        var place = $"coating system {system.Id}";
        foreach (var fault in Named("coating system", system.Id).Concat(Words(place, system.Name))
            .Concat(system.Stages.SelectMany(stage => Known(car, stage.Product))))
            yield return fault;
        if (system.Stages.Count is 0 or > MostStages)
            yield return new(place, $"it has {system.Stages.Count} stages", $"Give 1 to {MostStages} products in their order.");
        if (system.Stages.Any(stage => stage.Coats is < 1 or > MostCoats))
            yield return new(place, "a stage without a coat, or with very many", $"Give 1 to {MostCoats} coats.");
    }

    private static IEnumerable<Fault> Chosen(Car car, CoatingChosen chosen)
    {
        if (chosen.System is { } system && car.Coating.System(system) is null)
            yield return new($"coating system {system}", "there is none by this name",
                NearNames.Ask(system, car.Coating.Systems.Select(known => known.Id), "Describe it first: refettle coating system."));
        if (chosen.Parts.Count == 0)
            yield return new("coating", "no part is named", "Name one or more.");
        foreach (var fault in chosen.Parts.SelectMany(one => Part(car, one.Part)))
            yield return fault;
        foreach (var (part, area) in chosen.Parts.Where(one => one.SquareMetres is <= 0 or > 1_000))
            yield return new($"part {part}", $"an area of {area:0.###} m²", "Give more than 0, up to 1000 m².");
    }

    private static IEnumerable<Fault> Applied(Car car, AppliedCoat coat)
    {
        foreach (var fault in Known(car, coat.Product).Concat(coat.Parts.SelectMany(part => Part(car, part))))
            yield return fault;
        if (coat.Parts.Count == 0)
            yield return new("coat", "no part is named", "Name one or more.");
        if (coat.Coats is < 1 or > MostCoats)
            yield return new("coat", $"{coat.Coats} coats", $"Give 1 to {MostCoats}.");
        if (coat.Celsius is < -40 or > 80 || coat.SurfaceCelsius is < -40 or > 80 || coat.HumidityPercent is <= 0 or > 100)
            yield return new("coat", "a reading of the air or the surface is out of range", "Give -40 to 80 °C and more than 0 to 100 %.");
        if (coat.FilmMicrometres.Any(film => film is < 0 or > 5_000))
            yield return new("coat", "a film reading is out of range", "Give 0 to 5000 µm.");
    }

    private static IEnumerable<Fault> Known(Car car, string product)
    {
        if (car.Coating.Product(product) is null)
            yield return new($"product {product}", "there is none by this name",
                NearNames.Ask(product, car.Coating.Products.Select(known => known.Id), "Describe it first: refettle product add."));
    }

    private static IEnumerable<Fault> Part(Car car, string part)
    {
        if (car.Structure.Parts.All(known => known.Id != part))
            yield return new($"part {part}", "the car has no such part",
                NearNames.Ask(part, car.Structure.Parts.Select(known => known.Id), "See refettle show parts."));
    }

    private static IEnumerable<Fault> Named(string kind, string id) =>
        Identifier.IsValid(id)
            ? []
            : [new(kind, $"\"{id}\" is not an identifier", "Use small letters, digits, - _ and ., beginning with a letter or digit.")];

    private static IEnumerable<Fault> Words(string place, string words) =>
        string.IsNullOrWhiteSpace(words) ? [new(place, "a name or word is empty", "Say it in a few words.")] : Optional(place, words);

    private static IEnumerable<Fault> Optional(string place, string? words) =>
        words?.Length > MostWords ? [new(place, $"a line of {words.Length} characters", $"Keep it to {MostWords}.")] : [];
}
