namespace Refettle.Timeline.Scheduling;

/// <summary>One end of one activity comes at least a lag after one end of another. A lag's upper end is
/// an arc back, with a lag below 0.</summary>
internal readonly record struct Arc(int From, bool FromFinish, int To, bool ToFinish, int Lag)
{
    public Arc Mirrored => new(To, !ToFinish, From, !FromFinish, Lag);

    /// <summary>From start to start, where both are worked on without pauses.</summary>
    public int StartToStart(int[] duration) => Lag + (FromFinish ? duration[From] : 0) - (ToFinish ? duration[To] : 0);
}
