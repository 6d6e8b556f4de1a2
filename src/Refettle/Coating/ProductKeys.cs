using Refettle.Bench;

namespace Refettle.Coating;

/// <summary>Changes of a product, key by key, as they are typed.</summary>
public static class ProductKeys
{
    private static readonly string[] _words = ["name", "kind", "sheet", "mix", "late", "hazards", "recoat"];

    public static ValueList<string> All { get; } = [.. _words, .. FigureKinds.All.Select(ask => ask.Key)];

    /// <summary>The product with one key changed; a figure without a value is taken out.</summary>
    /// <param name="origin">Who says it.</param>
    public static Result<CoatingProduct> With(CoatingProduct product, string key, string value, Origin origin) => key switch
    {
        "name" => Good(product with { Name = value }),
        "sheet" => Good(product with { Sheet = OrNull(value) }),
        "mix" => Good(product with { Mix = OrNull(value) }),
        "late" => Good(product with { WhenLate = OrNull(value) }),
        "kind" => Then(Words<CoatingKind>(key, value),
            kinds => kinds.Count == 1 ? Good(product with { Kind = kinds[0] }) : Bad(key, "several kinds", "Give one.")),
        "hazards" => Then(Words<CoatingHazard>(key, value), hazards => Good(product with { Hazards = hazards })),
        "recoat" => Then(Rows(value, origin), rows => Good(product with { Recoat = rows })),
        _ when FigureKinds.Find(key) is { } ask => Figure(product, ask, value, origin),
        _ => Bad(key, "no data sheet key is called so", NearNames.Ask(key, All, $"Write one of: {string.Join(", ", All)}.")),
    };

    private static Result<CoatingProduct> Figure(CoatingProduct product, FigureAsk ask, string value, Origin origin)
    {
        var others = product.Figures.Where(figure => figure.Kind != ask.Kind);
        if (value.Length == 0)
            return Good(product with { Figures = others.ToValueList() });
        var unit = Units.Find(ask.Unit)!;
        return Then(Measure.Read(ask.Key, value, unit.Dimension),
            measure => Good(product with
            {
                Figures = others.Append(new(ask.Kind, Rounded(measure.In(unit)), origin)).OrderBy(figure => figure.Kind)
                    .ToValueList()
            }));
    }

    /// <summary><c>16h..7d@20C, 10h..open@30C</c>; without a second time the longest is not entered.</summary>
    private static Result<ValueList<RecoatRow>> Rows(string value, Origin origin)
    {
        var rows = value.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(text => Row(text, origin)).ToList();
        var faults = rows.SelectMany(row => row.Faults).ToList();
        return faults.Count > 0
            ? Result<ValueList<RecoatRow>>.Bad(faults)
            : Result<ValueList<RecoatRow>>.Good(rows.Select(row => row.Value).OrderBy(row => row.Celsius).ToValueList());
    }

    private static Result<RecoatRow> Row(string text, Origin origin)
    {
        if (text.Split('@') is not [var window, var celsius])
            return Result<RecoatRow>.Bad(new Fault("recoat", $"\"{text}\" has no temperature",
                "Write recoat=16h..7d@20C; open for a window without an end; several with commas."));
        var ends = window.Split("..");
        Result<Measure>[] read = [Measure.Read("recoat", celsius, Dimension.Temperature),
            .. ends.Take(2).Where(end => end != "open").Select(end => Measure.Read("recoat", end, Dimension.Time))];
        var faults = read.SelectMany(one => one.Faults).ToList();
        if (faults.Count > 0 || ends.Length > 2 || ends[0] == "open")
            return Result<RecoatRow>.Bad(faults.Count > 0
                ? faults
                : [new("recoat", $"\"{window}\" is no window", "Write 16h..7d, or 16h..open.")]);
        return Result<RecoatRow>.Good(new(Rounded(read[0].Value.In(Units.Celsius)), Rounded(read[1].Value.In(Units.Hour)),
            read.Length > 2 ? Rounded(read[2].Value.In(Units.Hour)) : null, ends is [_, "open"], origin));
    }

    private static Result<ValueList<T>> Words<T>(string key, string value)
        where T : struct, Enum
    {
        var known = Enum.GetValues<T>().ToDictionary(one => Word(one.ToString()!));
        var words = value.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var faults = words.Where(word => !known.ContainsKey(word))
            .Select(word => new Fault(key, $"\"{word}\" is not one",
                NearNames.Ask(word, known.Keys, $"Write {string.Join(", ", known.Keys)}."))).ToList();
        return faults.Count > 0
            ? Result<ValueList<T>>.Bad(faults)
            : Result<ValueList<T>>.Good(words.Select(word => known[word]).Distinct().ToValueList());
    }

    /// <summary><c>RustConverter</c> as <c>rust-converter</c>.</summary>
    public static string Word(string name) =>
        string.Concat(name.Select((c, i) => char.IsUpper(c) ? (i == 0 ? "" : "-") + char.ToLowerInvariant(c) : c.ToString()));

    private static decimal Rounded(double value) => Math.Round((decimal)value, 4);

    private static Result<CoatingProduct> Then<T>(Result<T> read, Func<T, Result<CoatingProduct>> next) =>
        read.IsGood ? next(read.Value) : Result<CoatingProduct>.Bad(read.Faults);

    private static string? OrNull(string value) => value.Length == 0 ? null : value;

    private static Result<CoatingProduct> Good(CoatingProduct product) => Result<CoatingProduct>.Good(product);

    private static Result<CoatingProduct> Bad(string key, string found, string mend) =>
        Result<CoatingProduct>.Bad(new Fault(key, found, mend));
}
