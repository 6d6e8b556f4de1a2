namespace Refettle.Timeline.Scheduling;

/// <summary>How much of each resource is held when.</summary>
internal abstract class Usage
{
    /// <summary>Nothing is held; no time before the given one will be asked about.</summary>
    public abstract void Clear(int from);

    /// <summary>The first start from a time on that windows and what is held allow;
    /// <see cref="WorkTime.Never"/> when there is none.</summary>
    public abstract int FirstFit(int activity, int from);

    public abstract void Hold(int activity, int start, int finish);

    /// <summary>Takes back what was held.</summary>
    public abstract void Free(int activity, int start, int finish);

    public static Usage For(Network network) => UnitUsage.Suits(network) ? new UnitUsage(network) : new StepUsage(network);
}
