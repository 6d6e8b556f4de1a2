using Refettle.Access;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>What a session asks for: steps, cautions, masks.</summary>
internal static class SessionSheet
{
    public static SpraySession Of(Car car, CoatingProduct product, Occasion occasion, ValueList<SprayedPart> parts) =>
        new(product.Id, occasion.At, occasion.Air, parts)
        {
            Steps = Steps(product, parts, car.Structure.PartName).ToValueList(),
            Cautions = CoatingCautions.Of(product),
            Masks = parts.SelectMany(part => KeepBare.Of(car, part.Part)).ToValueList(),
        };

    private static IEnumerable<string> Steps(CoatingProduct product, ValueList<SprayedPart> parts, Func<string, string> name)
    {
        if (parts.Any(part => part is { Stage: 0, NotBefore: null, Late: null }))
            yield return "First coat: derust, dust off and degrease right before it; bare steel rusts again within hours (common practice, no source).";
        foreach (var late in parts.Where(part => part.Late is not null).GroupBy(part => part.Late))
            yield return $"Too late for {string.Join("; ", late.Select(part => name(part.Part)))}, by the sheet of the coat before: {late.Key}";
        yield return "Mask what stays bare.";
        yield return Air(product);
        yield return $"Mix: {product.Mix ?? Missing("mix", "mixing ratio")}{Thinned(product)}{(product.Mix == CoatingProduct.OnePack ? "." : $"; use it up within {Or(product, FigureKind.PotLife)}.")}";
        var groups = parts.GroupBy(part => part.Coats).OrderBy(group => group.Key).ToList();
        foreach (var coats in groups)
            yield return $"{(coats.Key == 1 ? "1 coat" : $"{coats.Key} coats, {Or(product, FigureKind.FlashOff)} between them,")} of {Film(product)}{(groups.Count == 1 ? parts.Count == 1 ? "." : " on every part." : $": {string.Join("; ", coats.Select(part => name(part.Part)))}.")}";
        yield return $"Handle after {Or(product, FigureKind.Handle)} at {Or(product, FigureKind.At)}; cured after {Or(product, FigureKind.FullCure)}. Enter it when it is on: refettle coat {product.Id} …";
    }

    /// <summary>The four readings of ISO 8502-4, with the sheet's limits or those of ISO 12944-7.</summary>
    private static string Air(CoatingProduct product)
    {
        var needs = AirNeeds.Of(product);
        var humidity = product.Figure(FigureKind.MostHumidity) is null ? " (ISO 12944-7, the sheet's is not entered)" : "";
        var margin = product.Figure(FigureKind.DewMargin) is null ? " (ISO 12944-7, the sheet's is not entered)" : "";
        return $"Read air, humidity, dew point and surface: {Or(product, FigureKind.LeastAir)} to {Or(product, FigureKind.MostAir)}, below {needs.MostHumidityPercent:0.#} %{humidity}, surface {needs.MarginKelvin:0.#} K or more above the dew point{margin}.";
    }

    private static string Film(CoatingProduct product)
    {
        var (dry, solids, wet) =
            (product.Figure(FigureKind.DryFilm), product.Figure(FigureKind.Solids), product.Figure(FigureKind.WetFilm));
        var thinner = (double)(product.Figure(FigureKind.Thinner) ?? 0) / 100;
        return wet is not null ? $"{wet:0.#} µm wet{(dry is not null ? $", {dry:0.#} µm dry" : "")}"
            : dry is not null && solids is not null ? $"{Film(dry.Value, solids.Value, thinner):0} µm wet for {dry:0.#} µm dry (worked out)"
            : Missing("wet", "wet and dry film thickness");
    }

    private static double Film(decimal dry, decimal solidsPercent, double thinner) =>
        Bench.Coating.Film.WetMicrometres((double)dry, (double)solidsPercent / 100, thinner);

    private static string Thinned(CoatingProduct product) =>
        product.Figure(FigureKind.Thinner) is > 0 and var thinner ? $", {thinner:0.#} % thinner" : "";

    private static string Or(CoatingProduct product, FigureKind kind) =>
        product.Figures.FirstOrDefault(figure => figure.Kind == kind) is { } figure
            ? FigureKinds.Words(figure)
                + (figure.Origin == Origin.Maker ? "" : figure.Origin == Origin.CommonPractice ? " (common practice)" : " (your figure)")
            : Missing(FigureKinds.Of(kind).Key, FigureKinds.Of(kind).LookFor);

    private static string Missing(string key, string lookFor) => $"[{key} is not entered: look for \"{lookFor}\"]";
}
