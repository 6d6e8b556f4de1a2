namespace Refettle.Timeline.Scheduling;

/// <summary>Priority rules as keys: least first. The good ones of Kolisch (1996), and each once more with what hangs together by upper
/// ends of lags kept together.</summary>
internal static class Rules
{
    public static List<long[]> Of(Builder builder, int[] earliest)
    {
        var network = builder.Network;
        var finish = Math.Max(builder.Makespan(earliest), network.Release.Max());
        var latest = builder.Latest(finish) ?? builder.Latest(builder.Horizon) ?? earliest;
        var successors = Successors(network);
        List<long[]> rules =
        [
            Keys(network, i => network.Finish(i, latest[i])),
            Keys(network, i => latest[i]),
            Keys(network, i => (long)latest[i] * network.Count - successors[i]),
            Keys(network, i => latest[i] - earliest[i]),
            Keys(network, i => (long)latest[i] + network.Finish(i, latest[i]) - network.Duration[i] * Weight(network, i)),
        ];
        return network.Cycles.Any ? [.. rules.Select(rule => Together(network, rule)), .. rules] : rules;
    }

    private static long[] Keys(Network network, Func<int, long> key) => [.. Enumerable.Range(0, network.Count).Select(key)];

    private static long Weight(Network network, int i) =>
        Enumerable.Range(0, network.Needs[i].Length / 2)
            .Sum(k => 2L * network.Needs[i][2 * k + 1] / Math.Max(1, network.Capacity[network.Needs[i][2 * k]]));

    private static long[] Together(Network network, long[] rule)
    {
        var first = Enumerable.Range(0, network.Count).Where(i => network.Cycles.Of(i) >= 0).GroupBy(network.Cycles.Of)
            .ToDictionary(cycle => cycle.Key, cycle => cycle.Min(i => rule[i]));
        return Keys(network, i => network.Cycles.Of(i) is var cycle && cycle >= 0 ? 2 * first[cycle] : 2 * rule[i] + 1);
    }

    /// <summary>How many activities come after each, directly or not; counted up to once a path for speed.</summary>
    private static long[] Successors(Network network)
    {
        var after = new long[network.Count];
        foreach (var i in network.Cycles.Order.Reverse())
            after[i] = Math.Min(network.Count, network.Cycles.Successors[i].Sum(to => after[to] + 1));
        return after;
    }
}
