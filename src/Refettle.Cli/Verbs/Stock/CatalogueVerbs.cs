using System.CommandLine;
using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Cli.Verbs.Stock;

/// <summary><c>stock describe</c> and <c>stock assign</c>.</summary>
internal static class CatalogueVerbs
{
    private const string None = "none";

    public static Command Describe(Desk desk)
    {
        var number = StockWords.Number();
        var name = new Option<string?>("--name") { Description = "What it is." };
        var next = new Option<string?>("--superseded-by") { Description = "The number that took its place." };
        var serves = new Option<bool?>("--serves-for-new") { Description = "Old pieces serve just as well for the new number." };
        var substitutes = new Option<string[]>("--substitute")
        { Description = "Another number that may serve, with what is different: 'X-7: cut a slit first'." };
        var contains = new Option<string[]>("--contains")
        { Description = "A kit: what is in one, as number=count.", AllowMultipleArgumentsPerToken = true };
        var from = new Option<string[]>("--made-from")
        { Description = "Made up at home: what one takes, as number=count.", AllowMultipleArgumentsPerToken = true };
        var only = new Option<bool?>("--kit-only") { Description = "Sold only inside a kit." };
        var months = new Option<int?>("--shelf-life")
        { Description = "Months from its making until rubber is too old.", HelpName = "months" };
        var breaks = new Option<decimal?>("--breaks") { Description = "The chance, 0 to 1, that one breaks on taking off or fitting." };
        var origin = new Option<Origin?>("--origin")
        { Description = "Where shelf life and chance come from: common-practice, user, measured, maker." };
        return new Command("describe", "What is known of a part number; what is not named stays as it is.") { number, name, next, serves,
            substitutes, contains, from, only, months, breaks, origin }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed,
                    open => Reply.To(StockWords.Counts(parsed.GetValue(contains)),
                        inside => Reply.To(StockWords.Counts(parsed.GetValue(from)), made =>
            {
                var id = PartNumber.Canonical(parsed.GetRequiredValue(number));
                var before = open.Shelf.Number(id) ?? new() { Id = id };
                var now = before with
                {
                    Name = parsed.GetValue(name) ?? before.Name,
                    SupersededBy = parsed.GetValue(next) is { } later ? PartNumber.Canonical(later) : before.SupersededBy,
                    ServesForNew = parsed.GetValue(serves) ?? before.ServesForNew,
                    Substitutes = parsed.GetValue(substitutes) is { Length: > 0 } others
                        ? others.Select(Other).ToValueList()
                        : before.Substitutes,
                    Contains = inside.Count > 0 ? inside : before.Contains,
                    MadeFrom = made.Count > 0 ? made : before.MadeFrom,
                    KitOnly = parsed.GetValue(only) ?? before.KitOnly,
                    ShelfLifeMonths = parsed.GetValue(months) ?? before.ShelfLifeMonths,
                    Breaks = parsed.GetValue(breaks) ?? before.Breaks,
                    Origin = parsed.GetValue(origin)
                        ?? (parsed.GetValue(months) is null && parsed.GetValue(breaks) is null ? before.Origin : Origin.User),
                };
                return open.Record([ShelfWork.Described(open.Cars.Select(car => car.History), now)], $"{id} is described.");
            }))));
    }

    public static Command Assign(Desk desk)
    {
        var number = new Argument<string>("number") { Description = "The part number; none to take numbers away." };
        var things = new Argument<string[]>("thing")
        { Description = "'part x' or 'joint x' of the car that take it.", Arity = ArgumentArity.OneOrMore };
        var count = new Option<int?>("--count")
        { Description = "Pieces for the whole of each; by default as said before, else its count on the car." };
        return new Command("assign", "Says which parts or joints a part number goes onto.") { number, things, count }
            .Answers(desk, parsed => OpenShelf.With(desk, parsed, open =>
            {
                var text = parsed.GetRequiredValue(number);
                var id = text == None ? null : PartNumber.Canonical(text);
                var assigned = parsed.GetRequiredValue(things)
                    .Select(thing => new NumberAssigned(thing, id,
                        parsed.GetValue(count) ?? Said(open.Open.Car, thing, id) ?? Positions.Count(open.Open.Car, thing))).ToList();
                return open.Record(assigned, string.Join(Environment.NewLine, assigned.Select(one => $"{StockSayings.Of(one)}.")))
                    .With([.. assigned.SelectMany(one => Replaced(open.Open.Car, one))]);
            }));
    }

    /// <summary>A part or joint takes one number: another that it took is told, since it is gone from here.</summary>
    private static IEnumerable<Fault> Replaced(Car car, NumberAssigned now) =>
        now.Number is null ? [] : car.Numbers.Where(one => one.Thing == now.Thing && one.Number != now.Number)
        .Select(one => new Fault(one.Thing, $"it took {one.Count} × {one.Number} before",
            "That is replaced; to have it back, strike this entry.")
        { Severity = Severity.Note });

    /// <summary>How many it takes of the same number, as said before.</summary>
    private static int? Said(Car car, string thing, string? number) =>
        car.Numbers.FirstOrDefault(one => one.Thing == thing && one.Number == number)?.Count;

    private static Substitute Other(string text) => text.Split(':', 2, StringSplitOptions.TrimEntries) is [var number, var caveat]
        ? new(PartNumber.Canonical(number), caveat)
        : new(PartNumber.Canonical(text), "");
}
