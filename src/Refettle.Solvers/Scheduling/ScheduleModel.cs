using Google.OrTools.Sat;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>A project as constraints of CP-SAT: one interval for each activity and resource, on the resource's axis.</summary>
internal sealed class ScheduleModel
{
    private readonly Network _network;
    private readonly Axes _axes;
    private readonly int _from;
    private readonly int _to;

    /// <param name="earliest">The earliest starts to look at.</param>
    /// <param name="latest">The latest starts to look at.</param>
    /// <param name="bound">The last finish is not before.</param>
    /// <param name="most">The last finish is not after.</param>
    public ScheduleModel(Network network, int[] earliest, int[] latest, int bound, int most)
    {
        (_network, _axes) = (network, new(network));
        (_from, _to) = (earliest.Min(), most);
        Timings = new(Model, network, _axes, earliest, latest);
        Makespan = Model.NewIntVar(bound, most, "finish");
        foreach (var arc in network.Arcs)
            Add(arc);
        for (var r = 0; r < network.Capacity.Length; r++)
            AddResource(r);
        AddMakespan();
    }

    public CpModel Model { get; } = new();

    public Timings Timings { get; }

    public IntVar Makespan { get; }

    /// <summary>Nothing ends after.</summary>
    public int Horizon => _to;

    private void Add(in Arc arc)
    {
        // With what is done a lag only bounds the start of the other, and the starts to look at are bounded already.
        if (_network.IsDone[arc.From] || _network.IsDone[arc.To])
            return;
        var axis = Timings.AxisOf(arc.From) == Timings.AxisOf(arc.To) && (arc.FromFinish == arc.ToFinish || !arc.ToFinish) && arc.Lag == 0
            ? Timings.AxisOf(arc.From)
            : null;
        var from = arc.FromFinish ? Timings.Finish(arc.From, axis) : Timings.Start(arc.From, axis);
        var to = arc.ToFinish ? Timings.Finish(arc.To, axis) : Timings.Start(arc.To, axis);
        Model.Add(to >= from + arc.Lag);
    }

    private void AddResource(int r)
    {
        var (axis, capacity) = (_axes.OfResource[r], _network.Capacity[r]);
        var users = Enumerable.Range(0, _network.Count).Where(i => _network.Need(i, r) > 0 && !_network.IsDone[i]).ToList();
        var done = DoneStretches(r, axis);
        if (users.Sum(i => (long)_network.Need(i, r)) + (done.Count > 0 ? capacity : 0) <= capacity)
            return;
        if (capacity == 1)
        {
            Model.AddNoOverlap([.. users.Where(i => _network.Need(i, r) == 1).Select(i => Interval(i, axis)),
                .. done.Select(stretch => stretch.Interval)]);
            foreach (var _ in users.Where(i => _network.Need(i, r) > 1))
                Model.AddBoolOr([]);
            return;
        }

        var cumulative = Model.AddCumulative(capacity);
        foreach (var i in users)
            cumulative.AddDemand(Interval(i, axis), _network.Need(i, r));
        foreach (var (interval, held) in done)
            cumulative.AddDemand(interval, held);
    }

    private IntervalVar Interval(int i, Axis? axis)
    {
        var (start, finish) = (Timings.Start(i, axis), Timings.Finish(i, axis));
        if (axis == Timings.AxisOf(i) || (_network.IsUnbroken(i) && axis is null))
            return Model.NewFixedSizeIntervalVar(start, _network.Duration[i], "");
        return Model.NewIntervalVar(start, Model.NewIntVar(0, _to - _from, ""), finish, "");
    }

    /// <summary>What is taken by activities that are done or under way, never more than there is.</summary>
    private List<(IntervalVar Interval, int Held)> DoneStretches(int r, Axis? axis)
    {
        var done = Enumerable.Range(0, _network.Count)
            .Where(i => _network.IsDone[i] && _network.Need(i, r) > 0 && _network.DoneTo[i] > _from).ToList();
        var moments = done.SelectMany(i => new[] { Math.Max(_from, _network.DoneFrom[i]), _network.DoneTo[i] }).Distinct().Order().ToList();
        var stretches = new List<(IntervalVar, int)>();
        foreach (var (from, to) in moments.Zip(moments.Skip(1)))
        {
            var held = Math.Min(_network.Capacity[r],
                done.Where(i => _network.DoneFrom[i] <= from && _network.DoneTo[i] >= to).Sum(i => _network.Need(i, r)));
            var (start, end) = axis is null ? (from, to) : (axis.Time.Worked(from), axis.Time.Worked(to));
            if (held > 0 && end > start)
                stretches.Add((Model.NewFixedSizeIntervalVar(LinearExpr.Constant(start), end - start, ""), held));
        }

        return stretches;
    }

    /// <summary>The last finish; of activities on one axis only the last one there is looked up on the clock.</summary>
    private void AddMakespan()
    {
        var last = Enumerable.Range(0, _network.Count).Where(i => !Array.Exists(_network.Out[i], arc => IsCovered(arc))).ToList();
        foreach (var i in last.Where(i => Timings.AxisOf(i) is null))
            Model.Add(Makespan >= Timings.Finish(i, null));
        foreach (var axis in last.Select(Timings.AxisOf).OfType<Axis>().Distinct())
        {
            var members = last.Where(i => Timings.AxisOf(i) == axis).ToList();
            var (from, to) = (axis.Time.WorkedByFinishFrom(_from), axis.Time.Worked(_to));
            var worked = Model.NewIntVar(Math.Max(1, from), to, "");
            foreach (var i in members)
                Model.Add(worked >= Timings.Finish(i, axis));
            var clock = Model.NewIntVar(_from, _to, "");
            axis.Tie(Model, worked, clock, Math.Max(1, from), to, atEnd: true);
            Model.Add(Makespan >= clock);
        }
    }

    private bool IsCovered(in Arc arc) => !arc.ToFinish && arc.From != arc.To && !_network.Cycles.Share(arc.From, arc.To)
        && (arc.FromFinish ? arc.Lag >= 0 : _network.TimeOf(arc.From) is null && arc.Lag >= _network.Duration[arc.From]);
}
