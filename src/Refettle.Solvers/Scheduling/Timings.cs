using Google.OrTools.Sat;
using Google.OrTools.Util;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>The variables of a schedule: each activity has one start, on its own axis; by the clock and on other axes it is derived when
/// something asks for it.</summary>
internal sealed class Timings
{
    private readonly CpModel _model;
    private readonly Network _network;
    private readonly Axes _axes;
    private readonly int[] _earliest;
    private readonly int[] _latest;
    private readonly IntVar?[] _main;
    private readonly Dictionary<(int Activity, Axis? Axis, bool AtFinish), LinearExpr> _derived = [];
    private readonly List<(IntVar Variable, int Activity, Axis? Axis, bool AtFinish)> _hinted = [];

    public Timings(CpModel model, Network network, Axes axes, int[] earliest, int[] latest)
    {
        (_model, _network, _axes, _earliest, _latest) = (model, network, axes, earliest, latest);
        _main = [.. Enumerable.Range(0, network.Count).Select(Main)];
    }

    public Axis? AxisOf(int activity) => _axes.OfActivity[activity];

    public LinearExpr Start(int activity, Axis? axis) => At(activity, axis, false);

    public LinearExpr Finish(int activity, Axis? axis) => At(activity, axis, true);

    /// <summary>The starts by the clock that a solution gives.</summary>
    public int[] StartsIn(Func<IntVar, long> value) => [.. Enumerable.Range(0, _network.Count).Select(i => StartIn(value, i))];

    private int StartIn(Func<IntVar, long> value, int i)
    {
        if (_network.IsDone[i])
            return _network.DoneFrom[i];
        var start = (int)value(_main[i]!);
        return AxisOf(i) is { } axis ? axis.Time.Begin(start) : start;
    }

    public void Hint(int[] starts)
    {
        foreach (var (variable, activity, axis, atFinish) in _hinted)
        {
            var clock = atFinish ? _network.Finish(activity, starts[activity]) : starts[activity];
            _model.AddHint(variable, axis is null ? clock : axis.Time.Worked(clock));
        }
    }

    private IntVar? Main(int i)
    {
        if (_network.IsDone[i])
            return null;
        var axis = _axes.OfActivity[i];
        var variable = axis is null ? _model.NewIntVar(_earliest[i], _latest[i], "")
            : _network.IsUnbroken(i)
            ? _model.NewIntVarFromDomain(axis.Unbroken(_network.TimeOf(i)!, _network.Duration[i], _earliest[i], _latest[i]), "")
            : _model.NewIntVar(axis.Time.Worked(_earliest[i]), axis.Time.Worked(_latest[i]), "");
        _hinted.Add((variable, i, axis, false));
        return variable;
    }

    private LinearExpr At(int i, Axis? axis, bool atFinish)
    {
        if (_network.IsDone[i])
            return LinearExpr.Constant(Fixed(atFinish ? _network.DoneTo[i] : _network.DoneFrom[i], axis));
        if (axis == _axes.OfActivity[i])
            return atFinish ? _main[i]! + _network.Duration[i] : _main[i]!;
        if (_derived.TryGetValue((i, axis, atFinish), out var known))
            return known;
        if (axis is null && atFinish && _network.IsUnbroken(i))
            return At(i, null, false) + _network.Duration[i];
        return _derived[(i, axis, atFinish)] = axis is null ? ByClock(i, atFinish) : OnOther(i, axis, atFinish);
    }

    private static int Fixed(int time, Axis? axis) => axis is null ? time : axis.Time.Worked(time);

    private IntVar ByClock(int i, bool atFinish)
    {
        var own = _axes.OfActivity[i]!;
        var (from, to) = Range(i, atFinish);
        var clock = _model.NewIntVar(from, to, "");
        _hinted.Add((clock, i, null, atFinish));
        own.Tie(_model, At(i, own, atFinish), clock, own.Time.Worked(from), own.Time.Worked(to), atFinish);
        return clock;
    }

    private IntVar OnOther(int i, Axis axis, bool atFinish)
    {
        var (from, to) = Range(i, atFinish);
        var worked = _model.NewIntVar(axis.Time.Worked(from), axis.Time.Worked(to), "");
        _hinted.Add((worked, i, axis, atFinish));
        axis.Tie(_model, worked, At(i, null, atFinish), axis.Time.Worked(from), axis.Time.Worked(to), atFinish);
        return worked;
    }

    private (int From, int To) Range(int i, bool atFinish) =>
        atFinish ? (_network.Finish(i, _earliest[i]), _network.Finish(i, _latest[i])) : (_earliest[i], _latest[i]);
}
