using System.CommandLine;
using Refettle.Cli.Views;
using Refettle.Coating;
using Refettle.Logbook;
using Refettle.Sheets.Edits;

namespace Refettle.Cli.Verbs.Coating;

internal static class ProductVerb
{
    private static readonly Dictionary<string, Origin> _whose = new()
    { ["sheet"] = Origin.Maker, ["me"] = Origin.User, ["practice"] = Origin.CommonPractice };

    public static Command Make(Desk desk) => new("product", "Coatings as their data sheets describe them, and what is not entered yet.")
    {
        Enter(desk, "add", "Enters a product: name, kind, sheet, mix, recoat, hazards, late and the sheet's figures."),
        Enter(desk, "set", "Changes a product; a key without a value takes that figure out."),
        Show(desk),
        List(desk),
    };

    private static Command Enter(Desk desk, string verb, string says)
    {
        var id = new Argument<string>("id") { Description = "Its name in one word: small letters, digits and -." };
        var values = new Argument<string[]>("key=value")
        { Description = "Keys and values (docs/coating.md).", Arity = ArgumentArity.ZeroOrMore };
        var by = new Option<string>("--by")
        { Description = $"Who says these figures: {string.Join(", ", _whose.Keys)}.", DefaultValueFactory = _ => "sheet" };
        return new Command(verb, says) { id, values, by }.Answers(desk, parsed => desk.WithCar(parsed, open =>
        {
            var (asked, known) = (parsed.GetRequiredValue(id), open.Car.Coating.Product(parsed.GetRequiredValue(id)));
            if (known is null == (verb == "set"))
                return Reply.Bad([known is null
                    ? Missing(open.Car, asked)
                    : new($"product {asked}", "there is one by this name", "Change it with refettle product set, or take another name.")]);
            return Reply.To(KeyValue.Read(parsed.GetValue(values) ?? []), keys => Whose(parsed.GetRequiredValue(by), origin =>
                Reply.To(Changed(known ?? new() { Id = asked, Name = asked }, keys, origin),
                    product => desk.Record(open, [new ProductDescribed(product)], now => Shown(now.Car, product)))));
        }));
    }

    private static Command Show(Desk desk)
    {
        var id = new Argument<string>("id") { Description = "The product." };
        return new Command("show", "A product's figures with who says them, and what to look up.") { id }
            .Answers(desk, parsed => desk.WithCar(parsed, open =>
            open.Car.Coating.Product(parsed.GetRequiredValue(id)) is { } product
                ? Shown(open.Car, product)
                : Reply.Bad([Missing(open.Car, parsed.GetRequiredValue(id))])));
    }

    private static Command List(Desk desk) => new Command("list", "All products.").Answers(desk, parsed => desk.WithCar(parsed, open => new(
        CoatingView.OfProducts(open.Car.Coating),
        new
        {
            car = open.Car.Id,
            products = open.Car.Coating.Products.Select(product => new { product, missing = MissingFigures.Of(product) })
        })));

    private static Reply Whose(string word, Func<Origin, Reply> next) => _whose.TryGetValue(word, out var origin) ? next(origin)
        : Reply.Bad([new("--by", $"\"{word}\" is nobody known", $"Write {string.Join(", ", _whose.Keys)}.")]);

    private static Result<CoatingProduct> Changed(CoatingProduct product, ValueList<KeyValue> keys, Origin origin)
    {
        var faults = new List<Fault>();
        foreach (var key in keys)
        {
            var read = ProductKeys.With(product, key.Key, key.Value, origin);
            product = read.IsGood ? read.Value : product;
            faults.AddRange(read.Faults);
        }

        return faults.Count > 0 ? Result<CoatingProduct>.Bad(faults) : Result<CoatingProduct>.Good(product);
    }

    private static Reply Shown(Car car, CoatingProduct product) => new(
        CoatingView.Of(product),
        new { car = car.Id, product, missing = MissingFigures.Of(product), cautions = Refettle.Access.CoatingCautions.Of(product) });

    private static Fault Missing(Car car, string id) =>
        new($"product {id}", "there is none by this name",
            NearNames.Ask(id, car.Coating.Products.Select(known => known.Id),
                "refettle product list shows them; refettle product add makes one."));
}
