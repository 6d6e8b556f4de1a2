namespace Refettle.Timeline.Scheduling;

/// <summary>Schedules bred together, all pushed to the same side.</summary>
internal sealed class Population(int size, int activities)
{
    private readonly int[][] _starts = [.. Enumerable.Range(0, size).Select(_ => new int[activities])];
    private readonly Fitness[] _fitness = new Fitness[size];

    public int Size => size;

    public int[] Starts(int member) => _starts[member];

    public Fitness FitnessOf(int member) => _fitness[member];

    public long Makespans => _fitness.Sum(fitness => (long)fitness.Makespan);

    public void Set(int member, int[] starts, Fitness fitness)
    {
        starts.CopyTo(_starts[member], 0);
        _fitness[member] = fitness;
    }

    /// <summary>The better one of two drawn.</summary>
    public int Mate(int member, Random random)
    {
        var (one, other) = (random.Next(size), random.Next(size));
        var mate = _fitness[one].CompareTo(_fitness[other]) <= 0 ? one : other;
        return _fitness[mate].IsNone ? member : mate;
    }
}
