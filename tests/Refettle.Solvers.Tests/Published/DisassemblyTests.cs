using Refettle.Peers.Solvers;

namespace Refettle.Solvers.Tests.Published;

/// <summary>Least effort to reach targets in published AND/OR disassembly graphs.</summary>
public sealed class DisassemblyTests
{
    public static TheoryData<string, string, int> Instances => new()
    {
        { "P10-OR", UnderTest.Reduced, 90 }, { "P22-OR", UnderTest.Reduced, 102 }, { "P47-OR", UnderTest.Reduced, 127 },
        { "P10-OR", UnderTest.MixedInteger, 90 }, { "P22-OR", UnderTest.MixedInteger, 102 },
    };

    // Structure after Kalaycilar and others 2016, times from the MIT-licensed files; the least times were computed by
    // branch and bound and, for P10 and P22, by enumeration, with no code of this project.
    [SharedDataTheory]
    [MemberData(nameof(Instances))]
    public void Least_times_are_those_of_the_list(string instance, string solver, int rowCount)
    {
        var graph = DisassemblyGraph.Parse(SharedData.Read("disassembly_andor", $"{instance}.json"));
        var rows = SharedData.Read("disassembly_andor", "min_effort_derived.csv").Split('\n')
            .Select(line => line.Split(',')).Where(cells => cells[0] == instance).ToList();
        Assert.Equal(rowCount, rows.Count);
        foreach (var row in rows)
        {
            var problem = graph.Problem(row[2].Split(' ').Select(int.Parse));
            var answer = UnderTest.Make(solver).Solve(problem);
            Assert.True((long)(decimal.Parse(row[3]) * 100) == answer.Cost && answer.IsOptimal,
                $"targets {row[2]}: {row[3]} against {answer.Cost}, bound {answer.Bound}");
            Assert.Empty(Foundation.Faults(problem, answer));
        }
    }

    // McGovern and Gupta 2004, ten parts; data as in Ren and others, European J. of Operational Research 269 (2018) 647-660.
    // 173 for all parts is published; the others follow by listing all 1,024 subsets.
    [Theory]
    [InlineData(24, 1)]
    [InlineData(10, 2)]
    [InlineData(12, 3)]
    [InlineData(64, 4)]
    [InlineData(89, 5)]
    [InlineData(82, 6)]
    [InlineData(66, 7)]
    [InlineData(46, 8)]
    [InlineData(24, 9)]
    [InlineData(20, 10)]
    [InlineData(38, 1, 9)]
    [InlineData(107, 4, 5)]
    [InlineData(26, 1, 3)]
    [InlineData(48, 3, 8)]
    [InlineData(173, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10)]
    public void Ten_part_product_takes_its_published_times(int minutes, params int[] targets)
    {
        foreach (var solver in UnderTest.Names)
        {
            var answer = UnderTest.Make(solver).Solve(TenParts.Problem(targets));
            Assert.Equal(minutes * 100L, answer.Cost);
            Assert.True(answer.IsOptimal);
        }
    }

    private static readonly DisassemblyGraph TenParts = new(
    [
        new(1, 14, [], [2, 3]), new(2, 10, [], []), new(3, 12, [], []), new(4, 18, [8], []), new(5, 23, [7], []),
        new(6, 16, [7], []), new(7, 20, [8], []), new(8, 36, [], [2, 3]), new(9, 14, [], [2, 3]), new(10, 10, [], [2, 3]),
    ]);
}
