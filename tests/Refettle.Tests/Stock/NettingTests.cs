using CsCheck;
using Refettle.Stock.Netting;

namespace Refettle.Tests.Stock;

/// <summary>Cases of netting as textbooks have it; the rows were worked out by an independent script from the stated rules, the last two
/// agree with a published exercise (net requirement of 25 in period 3).</summary>
public sealed class NettingTests
{
    private static readonly ValueList<int> Gross = [10, 15, 25, 75, 15, 20];

    private static readonly NettingQuestion Base = new(Gross, [10, 0, 0, 0, 0, 0], 20, 2, LotRule.LotForLot);

    [Fact]
    public void Lot_for_lot() =>
        Same(Base, onHand: [20, 5, 0, 0, 0, 0], net: [0, 0, 20, 75, 15, 20], releases: [20, 75, 15, 20, 0, 0]);

    [Fact]
    public void In_multiples_of_fifty()
    {
        var answer = Same(Base with { Lot = new(1, 50) }, onHand: [20, 5, 30, 5, 40, 20], net: null, releases: [50, 50, 50, 0, 0, 0]);
        Assert.Equal([0, 0, 50, 50, 50, 0], answer.Receipts);
    }

    [Fact]
    public void With_five_always_left() =>
        Same(Base with { Safety = 5 }, onHand: [20, 5, 5, 5, 5, 5], net: [0, 0, 25, 75, 15, 20], releases: [25, 75, 15, 20, 0, 0]);

    [Fact]
    public void What_is_made_up_asks_for_what_goes_into_it()
    {
        var made = Same(new([0, 0, 30, 0, 20, 10], [0, 0, 0, 0, 0, 0], 5, 1, LotRule.LotForLot), onHand: null, net: null,
            releases: [0, 25, 0, 20, 10, 0]);
        Assert.Equal([0, 100, 0, 80, 40, 0], NetRequirements.Below(made, 4));
        var below = Same(new(NetRequirements.Below(made, 4), [0, 40, 0, 0, 0, 0], 12, 2, LotRule.LotForLot), onHand: null,
            net: [0, 48, 0, 80, 40, 0], releases: [0, 80, 40, 0, 0, 0]);
        Assert.Equal(new PastDue(1, 48), Assert.Single(below.PastDue));
    }

    [Fact]
    public void What_is_on_order_covers_a_need_only_once_it_has_come()
    {
        var question = new NettingQuestion([50, 125, 100, 60, 40], [0, 200, 0, 200, 0], 100, 0, LotRule.LotForLot);
        Same(question, onHand: [50, 125, 25, 165, 125], net: [0, 0, 0, 0, 0], releases: null);
        Assert.Equal([0, 0, 25, 0, 0], NetRequirements.Of(question with { Gross = [50, 125, 150, 60, 40] }).Net);
    }

    [Theory]
    [InlineData(3, 1, 1, 3)]
    [InlineData(3, 10, 1, 10)]
    [InlineData(11, 10, 4, 12)]
    [InlineData(0, 10, 4, 0)]
    public void So_many_are_ordered_at_once(int needed, int minimum, int multiple, int ordered) =>
        Assert.Equal(ordered, new LotRule(minimum, multiple).Size(needed));

    private static readonly Gen<NettingQuestion> Questions = Gen.Select(
        Gen.Select(Gen.Int[0, 40], Gen.Int[0, 20]).Array[1, 12], Gen.Int[0, 60], Gen.Int[0, 4], Gen.Int[1, 30], Gen.Int[1, 12],
        Gen.Int[0, 10])
        .Select((periods, onHand, lead, minimum, multiple, safety) => new NettingQuestion(
            periods.Select(period => period.Item1).ToValueList(), periods.Select(period => period.Item2).ToValueList(), onHand, lead,
            new(minimum, multiple), safety));

    [Fact]
    public void The_books_are_kept_in_every_case() =>
        Questions.Sample(question => Assert.Empty(NettingCheck.Of(question, NetRequirements.Of(question))));

    [Fact]
    public void More_stock_never_orders_more() => Gen.Select(Questions, Gen.Int[0, 50]).Sample((question, more) =>
    {
        var lotForLot = question with { Lot = LotRule.LotForLot };
        Assert.True(Ordered(lotForLot with { OnHand = question.OnHand + more }) <= Ordered(lotForLot));

        // With lots the sum of what is ordered by any day never grows by more than the last lot that is not needed.
        Assert.True(Ordered(question with { OnHand = question.OnHand + more }) <= Ordered(question)
            + Math.Max(question.Lot.Minimum, question.Lot.Multiple));
    });

    private static int Ordered(NettingQuestion question) => NetRequirements.Of(question).Receipts.Sum();

    private static NettingAnswer Same(NettingQuestion question, ValueList<int>? onHand, ValueList<int>? net, ValueList<int>? releases)
    {
        var answer = NetRequirements.Of(question);
        Assert.Empty(NettingCheck.Of(question, answer));
        Assert.Equal(onHand ?? answer.OnHand, answer.OnHand);
        Assert.Equal(net ?? answer.Net, answer.Net);
        Assert.Equal(releases ?? answer.Releases, answer.Releases);
        return answer;
    }
}
