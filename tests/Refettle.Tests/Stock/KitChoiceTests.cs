using CsCheck;
using Refettle.Stock.Baskets;

namespace Refettle.Tests.Stock;

public sealed class KitChoiceTests
{
    private static readonly string[] Numbers = ["A", "B", "C"];

    private sealed record Case(int[] Missing, bool[] KitOnly, int[] Prices, int[][] Kits, int[] KitPrices)
    {
        public ValueList<NumberCount> Needs =>
            Numbers.Zip(Missing, (number, count) => new NumberCount(number, count)).Where(one => one.Count > 0).ToValueList();

        public ValueList<PartNumber> Known =>
            Kits.Select((inside, i) => new PartNumber
            {
                Id = $"KIT-{i}",
                Contains = Numbers.Zip(inside, (number, count) => new NumberCount(number, count)).Where(one => one.Count > 0)
                        .ToValueList()
            }).ToValueList();

        public decimal? Price(string number, int count) =>
            count * (number.StartsWith("KIT", StringComparison.Ordinal)
                ? KitPrices[number[4] - '0']
                : Prices[Array.IndexOf(Numbers, number)]);
    }

    private static readonly Gen<Case> Cases = Gen.Select(
        Gen.Int[0, 6].Array[3], Gen.Bool.Array[3], Gen.Int[1, 20].Array[3], Gen.Int[0, 3].Array[3].Array[0, 3], Gen.Int[1, 40].Array[3])
        .Select((missing, only, prices, kits, kitPrices) => new Case(missing, only, prices, kits, kitPrices));

    [Fact]
    public void No_other_purchase_is_cheaper_by_trying_all() => Cases.Sample(one =>
    {
        var choice = Choose(one);
        Assert.True(choice.Proven);
        Assert.Equal(ByTryingAll(one), (choice.Unsold.Sum(left => left.Count), choice.Cost.Amount));
    });

    [Fact]
    public void What_is_bought_is_what_was_missing_and_what_is_over() => Cases.Sample(one =>
    {
        var choice = Choose(one);
        foreach (var number in Numbers)
        {
            var inKits = choice.Kits
                .Sum(kit => kit.Count * one.Known.First(known => known.Id == kit.Number).Contains.Where(inside => inside.Number == number)
                    .Sum(inside => inside.Count));
            Assert.Equal(inKits + Of(choice.Singles, number) + Of(choice.Unsold, number), Of(one.Needs, number) + Of(choice.Over, number));
        }
    });

    /// <summary>A kit without a price is not free: two of it would spare five nuts that have one.</summary>
    [Fact]
    public void What_has_no_known_price_is_bought_only_where_nothing_that_has_one_does()
    {
        Money? Price(string number, int count) => number == "NUT" ? new(count) : null;
        var kit = new PartNumber { Id = "KIT", Contains = [new("SEAL", 1), new("NUT", 5)] };
        var choice = new KitChoice([new("NUT", 10), new("SEAL", 1)], [kit], Price, number => number == "SEAL").Best();
        Assert.Equal(([new("KIT", 1)], [new("NUT", 5)]), (choice.Kits, choice.Singles));
        Assert.Empty(new KitChoice([new("NUT", 10)], [kit], Price, _ => false).Best().Kits);
    }

    private static KitPurchase Choose(Case one) =>
        new KitChoice(one.Needs, one.Known, (number, count) => one.Price(number, count) is { } price ? new Money(price) : null,
            number => one.KitOnly[Array.IndexOf(Numbers, number)]).Best();

    private static int Of(ValueList<NumberCount> counts, string number) =>
        counts.Where(count => count.Number == number).Sum(count => count.Count);

    /// <summary>Up to six of each kit, every combination.</summary>
    private static (int, decimal) ByTryingAll(Case one)
    {
        var best = (int.MaxValue, decimal.MaxValue);
        var kits = one.Kits.Length;
        for (var code = 0; code < Math.Pow(7, kits); code++)
        {
            var counts = Enumerable.Range(0, kits).Select(kit => code / (int)Math.Pow(7, kit) % 7).ToArray();
            var left = Enumerable.Range(0, 3)
                .Select(number => Math.Max(0,
                    one.Missing[number] - Enumerable.Range(0, kits).Sum(kit => counts[kit] * one.Kits[kit][number]))).ToArray();
            var cost = Enumerable.Range(0, kits).Sum(kit => counts[kit] * one.KitPrices[kit]) + Enumerable.Range(0, 3)
                .Where(number => !one.KitOnly[number]).Sum(number => left[number] * one.Prices[number]);
            var found = (Enumerable.Range(0, 3).Where(number => one.KitOnly[number]).Sum(number => left[number]), (decimal)cost);
            best = found.CompareTo(best) < 0 ? found : best;
        }

        return best;
    }
}
