using CsCheck;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Stock.Baskets;

namespace Refettle.Tests.Stock;

/// <summary>Random shelves, orders and needs of two cars, with supersession, substitutes, kits and pieces made up.</summary>
public sealed class BasketProperties
{
    private static readonly string[] Numbers = ["OLD", "NEW", "SUB", "SEAL", "KIT", "PIPE", "NUT"];

    private static readonly PartNumber[] Known =
    [
        new() { Id = "OLD", SupersededBy = "NEW", Substitutes = [new("SUB", "cut a slit")] }, new() { Id = "NEW" }, new() { Id = "SUB" },
        new() { Id = "SEAL", KitOnly = true }, new() { Id = "KIT", Contains = [new("SEAL", 2), new("NEW", 1)] },
        new() { Id = "PIPE", MadeFrom = [new("NUT", 2)] }, new() { Id = "NUT" },
    ];

    private sealed record Case(Shelf Shelf, Need[] Needs);

    private static readonly Gen<Holding> Holdings = Gen.Select(Gen.Int[0, 6], Gen.Int[0, 6], Gen.Int[-5, 60]).Select((number, count, use) =>
        new Holding(new(Numbers[number], UseBy: use % 3 == 0 ? Garage.Day(use) : null), count));

    private static readonly Gen<OrderedLine> Lines = Gen.Select(Gen.Int[0, 6], Gen.Int[1, 6])
        .Select((number, count) => new OrderedLine(new(Numbers[number], count), [], 0, 0));

    private static readonly Gen<Need> Needs = Gen.Select(Gen.Bool, Gen.Int[0, 5], Gen.Int[0, 6], Gen.Int[1, 5], Gen.Int[0, 40])
        .Select((saloon, place, number, count, day) =>
        new Need(saloon ? "saloon" : "estate", $"part p{place}", Numbers[number], "", count, day % 4 == 0 ? null : Garage.Day(day),
            NeedReason.Asked, null, ""));

    private static readonly Gen<Claim> Claims = Gen.Select(Gen.Bool, Gen.Int[0, 5], Gen.Int[0, 6], Gen.Int[1, 3])
        .Select((saloon, place, number, count) =>
        new Claim(saloon ? "saloon" : "estate", $"part p{place}", Numbers[number], count, []));

    private static readonly Gen<Case> Cases = Gen.Select(Holdings.Array[0, 6], Lines.Array[0, 3], Needs.Array[0, 8], Claims.Array[0, 3])
        .Select((holdings, lines, needs, claims) => new Case(
        new()
        {
            Numbers = [.. Known],
            Holdings = holdings.DistinctBy(holding => holding.Batch).OrderBy(holding => holding.Batch.Number, StringComparer.Ordinal)
                .ToValueList(),
            Orders = [new(Guid.Empty, "estate", "Harbour Rubber", Garage.Day(-3), Garage.Day(9), Garage.Day(9), null, null,
                lines.DistinctBy(line => line.Line.Number).ToValueList())],
            Claims = claims.DistinctBy(claim => (claim.Car, claim.Thing, claim.Number)).ToValueList(),
        }, needs));

    /// <summary>Over both cars: pieces given out are pieces that are there or to come, kits counted once, opened or whole.</summary>
    [Fact]
    public void No_piece_is_given_twice() => Cases.Sample(one =>
    {
        var basket = Basket(one);
        var given = basket.Lines.SelectMany(line => line.Given).ToList();
        foreach (var supply in given.GroupBy(give => give.Supply))
            Assert.True(supply.Key.Count > 0);
        foreach (var number in Numbers)
        {
            var loose = given.Where(give => give.Supply.Number == number && give.Supply.Kit is null && give.Supply.Order is null)
                .Sum(give => give.Count);
            Assert.True(loose <= one.Shelf.OnHand(number), number);
            var ordered = given.Where(give => give.Supply.Number == number && give.Supply.Order is not null).Sum(give => give.Count);
            Assert.True(ordered <= one.Shelf.Orders[0].Lines.Where(line => line.Line.Number == number).Sum(line => line.ToCome));
        }

        var opened = Known[4].Contains
            .Max(inside => (given.Where(give => give.Supply.Kit == "KIT" && give.Supply.Number == inside.Number)
                .Sum(give => give.Count) + inside.Count - 1) / inside.Count);
        var whole = given.Where(give => give.Supply.Number == "KIT" && give.Supply.Order is null).Sum(give => give.Count);
        Assert.True(opened + whole <= one.Shelf.OnHand("KIT"));
    });

    [Fact]
    public void Every_need_is_served_made_up_or_bought() => Cases.Sample(one =>
    {
        var basket = Basket(one);
        Assert.All(basket.Lines, line => Assert.Equal(line.Need.Count, line.Given.Sum(give => give.Count) + line.Missing));
        var made = basket.MadeUp.Sum(piece => piece.Count);
        var asked = one.Needs.GroupBy(need => (need.Car, need.Thing)).Sum(place => place.Max(need => need.Count));
        Assert.Equal(asked, basket.Lines.Where(line => line.Need.Reason != NeedReason.MakeUp).Sum(line => line.Need.Count) + made);
        Assert.Equal(2 * made, basket.Lines.Where(line => line.Need.Reason == NeedReason.MakeUp).Sum(line => line.Need.Count));
        var bought = basket.Purchases
            .Sum(purchase => purchase.Contents.Count > 0 ? purchase.Contents.Sum(inside => inside.Count) : purchase.Needed);
        Assert.True(bought >= basket.Lines.Sum(line => line.Missing));
    });

    [Fact]
    public void What_is_kept_for_one_place_goes_to_no_other_and_too_old_rubber_to_none() => Cases.Sample(one =>
        Assert.All(Basket(one).Lines, line => Assert.All(line.Given, give =>
        {
            Assert.True(give.Supply.For is null || give.Supply.For == (line.Need.Car, line.Need.Thing));
            Assert.True(give.Supply.Until is null || give.Supply.Until >= (line.Need.By ?? Garage.Day(0)));
        })));

    [Fact]
    public void As_many_pieces_serve_as_can_by_trying_all() => Cases.Sample(one =>
    {
        var needs = one.Needs.DistinctBy(need => (need.Car, need.Thing)).Take(5)
            .Select(need => need with { Count = Math.Min(2, need.Count) }).ToValueList();
        var supplies = Supplies.Of(one.Shelf, needs, Garage.Day(0), 0.8).Take(5)
            .Select(supply => supply with { Count = Math.Min(2, supply.Count) }).ToValueList();
        var served = Allocation.Of(one.Shelf, needs, supplies);
        Assert.Equal(Most(one.Shelf, needs, supplies), served.Sum(line => line.Given.Sum(give => give.Count)));
        Assert.All(supplies.Index(),
            supply => Assert.True(served.SelectMany(line => line.Given).Where(give => ReferenceEquals(give.Supply, supply.Item))
                .Sum(give => give.Count) <= supply.Item.Count));
    });

    [Fact]
    public void More_stock_never_buys_more() => Gen.Select(Cases, Gen.Int[0, 6], Gen.Int[1, 4]).Sample((one, number, more) =>
    {
        var batch = new Batch(Numbers[number], PieceCondition.Used, Garage.Day(-1));
        var richer = one.Shelf with { Holdings = [.. one.Shelf.Holdings, new(batch, more)] };
        var (before, after) = (Basket(one), Basket(one with { Shelf = richer }));
        Assert.True(after.Lines.Sum(line => line.Missing) <= before.Lines.Sum(line => line.Missing));
    });

    private static Basket Basket(Case one) => BasketPlanner.Of(one.Shelf, one.Needs, Garage.Day(0), 0.8);

    /// <summary>Piece by piece, every choice.</summary>
    private static int Most(Shelf shelf, ValueList<Need> needs, ValueList<Supply> supplies)
    {
        var family = new Family(shelf.Numbers);
        var pieces = needs.SelectMany(need => Enumerable.Repeat(need, need.Count)).ToArray();
        var known = new Dictionary<(int, string), int>();
        return Best(0, [.. supplies.Select(supply => supply.Count)]);

        int Best(int piece, int[] left)
        {
            if (piece == pieces.Length)
                return 0;
            var key = (piece, string.Join(',', left));
            if (known.TryGetValue(key, out var seen))
                return seen;
            var best = Best(piece + 1, left);
            foreach (var (i, supply) in supplies.Index().Where(pair => left[pair.Index] > 0 && Fits(pieces[piece], pair.Item)))
            {
                var less = left.ToArray();
                less[i]--;
                best = Math.Max(best, 1 + Best(piece + 1, less));
            }

            return known[key] = best;
        }

        bool Fits(Need need, Supply supply) =>
            family.Serves(supply.Number, need.Number!) && (supply.For is null || supply.For == (need.Car, need.Thing))
            && (supply.Until is null || (supply.Until >= (need.By ?? supply.From) && supply.Until >= supply.From));
    }
}
