namespace Refettle.Bench.Fuzzing;

/// <summary>Something that reads what people or networks give it.</summary>
/// <param name="Seeds">Sound inputs, to be changed.</param>
/// <param name="Share">How many of a thousand inputs go to it.</param>
/// <param name="Read">Reads one input. It may refuse it; it must not throw.</param>
internal sealed record Target(string Name, int Share, IReadOnlyList<string> Seeds, Action<string> Read);
