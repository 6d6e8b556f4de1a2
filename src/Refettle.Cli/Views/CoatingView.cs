using Refettle.Coating;
using Refettle.Logbook;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Products, sessions, what is due and what is to be bought.</summary>
internal static class CoatingView
{
    public static IRenderable Of(Car car, CoatingPlan plan)
    {
        var lines = new List<IRenderable>();
        if (plan.Sessions.Count + plan.Unplanned.Count == 0)
            lines.Add(new Text("Nothing is to be coated. Choose a system for parts: refettle coating for SYSTEM PART=AREA …"));
        if (plan.Sessions.Count > 0)
            lines.Add(new Text(
                $"{Wording.Count(plan.Sessions.Count, "session")}{(plan.IsProven ? ", fewer will not do" : $", at least {plan.AtLeast} (search ended early)")}."));
        var masked = new HashSet<string>();
        foreach (var session in plan.Sessions)
            lines.AddRange(Session(car, session, masked));
        lines.AddRange(plan.Unplanned
            .Select(one => new Text($"Not planned: {car.Structure.PartName(one.Part)}, {one.Product}: {one.Why}. {one.Mend}")));
        return new Rows(lines);
    }

    public static IRenderable OfDue(ValueList<DueCoat> due)
    {
        if (due.Count == 0)
            return new Text("No part has a coating system yet: refettle coating for SYSTEM PART=AREA …");
        var table = new Table { Border = TableBorder.None };
        table.AddColumns("Part", "Next", "", "Not before", "Not after");
        foreach (var one in due)
            table.AddRow(new Text(one.Part), new Text(one.Next ?? ""), new Text(DueCoats.Words(one)),
                new Text(one.Opens is { } opens ? DayWords.Moment(opens) : ""),
                new Text(one.Closes is { } closes ? DayWords.Moment(closes) : ""));
        return table;
    }

    public static IRenderable OfNeeds(Car car, ValueList<PaintNeed> needs) =>
        needs.Count == 0 ? new Text("No coat is to come.") : new Rows(needs.Select(need => new Text(PaintNeeds.Words(car, need))));

    public static IRenderable OfProducts(CarCoating coating) => coating.Products.Count == 0
        ? new Text("No product yet. Enter one from its data sheet: refettle product add epoxy \"sheet=PDS 12, issue 3\" kind=epoxy-primer recoat=16h..7d@20C")
        : new Rows(coating.Products
            .Select(product => new Text(
                $"{product.Id}  {product.Name} ({ProductKeys.Word(product.Kind.ToString())}); {(MissingFigures.Of(product).Count is > 0 and var missing ? $"{Wording.Count(missing, "figure")} not entered" : "every figure is entered")}")));

    public static IRenderable Of(CoatingProduct product)
    {
        var lines = new List<string>
            { $"{product.Name} ({ProductKeys.Word(product.Kind.ToString())}), {product.Sheet ?? "no data sheet"}" };
        lines.AddRange(product.Recoat
            .Select(row => $"  next coat at {row.Celsius:0.#} °C: {row.OpensHours:0.#} h to {(row.HasNoEnd ? "no end" : row.ClosesHours is { } closes ? $"{closes:0.#} h" : "not entered")} ({Wording.Of(row.Origin)})"));
        lines.AddRange(product.Figures
            .Select(figure => $"  {FigureKinds.Of(figure.Kind).Says}: {FigureKinds.Words(figure)} ({Wording.Of(figure.Origin)})"));
        lines.AddRange(new[] { ("mix", product.Mix), ("when late", product.WhenLate) }.Where(pair => pair.Item2 is not null)
            .Select(pair => $"  {pair.Item1}: {pair.Item2}"));
        lines.AddRange(MissingFigures.Of(product)
            .Select(missing => $"  not entered: {missing.Key}, {missing.Says}. Look for: {missing.LookFor}"));
        lines.AddRange(Access.CoatingCautions.Of(product).Select(caution => $"  ! {caution}"));
        return new Rows(lines.Select(line => new Text(line)));
    }

    /// <summary>For each part its spots, those at one joint in one line; why once at the end.</summary>
    public static IRenderable OfMasks(Car car, ValueList<BareSpot> masks) => masks.Count == 0 ? new Text("Nothing that its joints tell of.")
        : new Rows(masks.GroupBy(spot => spot.Part)
            .SelectMany(part => part.GroupBy(spot => spot.Joint ?? spot.Spot).Select(Mask)
                .Prepend($"{car.Structure.PartName(part.Key)}: keep bare"))
            .Concat(masks.Select(spot => spot.Why).Where(why => why.Length > 0).Distinct().Select(why => $"Why: {why}."))
            .Select(line => new Text(line)));

    private static string Mask(IEnumerable<BareSpot> spots) =>
        $"  {string.Join("; ", spots.Select((spot, i) => $"{(i == 0 ? spot.Spot : spot.Spot[(spot.Spot.IndexOf(": ", StringComparison.Ordinal) + 1)..].TrimStart())}{(spot.Origin == Origin.User ? ", your word" : "")}"))}";

    /// <param name="masked">Parts of which it was told already what stays bare.</param>
    private static IEnumerable<IRenderable> Session(Car car, SpraySession session, HashSet<string> masked)
    {
        yield return new Text("");
        yield return new Text(
            $"{DayWords.Moment(session.At)}  {car.Coating.Product(session.Product)?.Name}{(session.Air is { } air ? $" ({air.Celsius:0.#} °C, {air.HumidityPercent:0.#} % expected)" : "")}");
        foreach (var part in session.Parts)
            yield return new Text(
                $"  {car.Structure.PartName(part.Part)}{(part.NotBefore is { } opens ? $", not before {DayWords.Moment(opens)}" : "")}{(part.NotAfter is { } closes ? $", not after {DayWords.Moment(closes)}" : "")}{(part.Corner is { } corner ? $", in {car.Calendar.NameOf(corner)}" : "")}");
        foreach (var caution in session.Cautions)
            yield return new Text($"  ! {caution}");
        foreach (var (step, i) in session.Steps.Select((step, i) => (step, i)))
            yield return new Text($"  {i + 1}. {step}");
        var again = session.Masks.Select(spot => spot.Part).Distinct().Where(part => !masked.Add(part)).ToList();
        var masks = session.Masks.Where(spot => !again.Contains(spot.Part)).ToValueList();
        if (masks.Count > 0 || again.Count == 0)
            yield return new Padder(OfMasks(car, masks), new(2, 0, 0, 0));
        if (again.Count > 0)
            yield return new Text($"  {string.Join(", ", again.Select(car.Structure.PartName))}: keep bare as above");
    }
}
