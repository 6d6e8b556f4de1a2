using Refettle.Access.Ordering;

namespace Refettle.Tests.Access.Ordering;

/// <summary>Kongar and Gupta's ten components with direction and tool changes (Int. J. Advanced Manufacturing Technology, 2005/2006):
/// two published sequences cost 36 and 33, the published optimum over all feasible orders is 29.</summary>
public sealed class SequencingTests
{
    private const string Names = "ABCDEFGHIJ";
    private static readonly int[] Time = [2, 3, 3, 2, 3, 4, 2, 1, 3, 2];
    private static readonly string[] Direction = ["+y", "+x", "+x", "+z", "-z", "-z", "-y", "-x", "-z", "-y"];
    private const string Method = "DNNDNNDDND";
    private static readonly int[] Demand = [0, 1, 1, 2, 1, 1, 2, 0, 1, 0];
    private const string Material = "ASSSPPSPPP";

    [Theory]
    [InlineData("BCAIHGJDFE", 36)]
    [InlineData("BCAHDGJIEF", 29)]
    public void The_published_sequences_cost_what_was_published(string sequence, int cost) =>
        Assert.Equal(cost, CostOf([.. sequence.Select(name => Names.IndexOf(name))]));

    [Fact]
    public void The_published_optimum_is_found_and_proven()
    {
        var row = Sequencing.Best(Problem(), width: 4_000)!;
        Assert.Equal(29, CostOf(row.Order));
        Assert.True(row.IsProven);
    }

    [Fact]
    public void A_narrow_beam_finds_a_valid_row_and_claims_no_proof()
    {
        var row = Sequencing.Best(Problem(), width: 2)!;
        Assert.Equal(10, row.Order.Distinct().Count());
        Assert.True(CostOf(row.Order) is >= 29 and <= 44);
        Assert.False(row.IsProven);
    }

    /// <summary>B and C first; H before D and G; G before E and F.</summary>
    private static SequencingProblem<int> Problem()
    {
        int[] first = [1, 2];
        var before = Enumerable.Range(0, 10).Select(item => item is 1 or 2 ? [] : first.ToList()).ToArray();
        before[3].Add(7);
        before[6].Add(7);
        before[4].Add(6);
        before[5].Add(6);
        return new()
        {
            Before = before,
            Start = -1,
            Change = (last, item) => (last < 0 ? 0 : Term(last, item), item),
        };
    }

    private static int CostOf(IReadOnlyList<int> order) =>
        order.Zip(order.Skip(1), Term).Sum() + Time[order[^1]];

    private static int Term(int item, int next)
    {
        if (Demand[item] == 2 && Demand[next] == 2 && Material[item] == Material[next])
            return 0;
        var turn = Direction[item] == Direction[next] ? 0 : Direction[item][1] == Direction[next][1] ? 2 : 1;
        return Time[item] + turn + (Method[item] == Method[next] ? 0 : 1);
    }
}
