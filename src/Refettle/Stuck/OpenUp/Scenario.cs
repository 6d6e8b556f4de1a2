namespace Refettle.Stuck.OpenUp;

/// <summary>A car drawn by chance: the level of every place, and for every joint of every group a mark
/// from 0 to 1. A joint holds when its mark is not below its chance to come free, so that all sets of
/// accesses are tried on the same cars.</summary>
internal sealed record Scenario(int[] Levels, double[][] Marks)
{
    public static Scenario Draw(Beliefs beliefs, ValueList<Group> groups, Random random) => new(
        beliefs.Draw(random), [.. groups.Select(group => Enumerable.Range(0, group.Count).Select(_ => random.NextDouble()).ToArray())]);
}
