namespace Refettle.Timeline.Scheduling.Proving;

/// <summary>What the sides of all activities have come to, and by which steps, which can be taken back level by level.</summary>
internal sealed class Bounds
{
    private readonly int[] _value;
    private readonly int[] _rootEarliest;
    private readonly int[] _last;
    private readonly List<int> _levels = [];
    private Step[] _steps = new Step[1024];

    public Bounds(int[] earliest, int[] latest)
    {
        _value = [.. earliest.SelectMany((start, i) => new[] { start, -latest[i] })];
        _rootEarliest = [.. earliest];
        _last = [.. _value.Select(_ => -1)];
        Sum = _value.Sum();
    }

    public int Sides => _value.Length;

    /// <summary>Steps taken.</summary>
    public int Count { get; private set; }

    /// <summary>What all sides have come to, together: the greater, the fewer starts are left.</summary>
    public int Sum { get; private set; }

    /// <summary>How many things are being tried, one upon the other.</summary>
    public int Level => _levels.Count;

    /// <summary>What could not be, and why it would have to, when a step was refused.</summary>
    public (Statement Statement, Reason Reason) Refused { get; private set; }

    public int this[int side] => _value[side];

    public ReadOnlySpan<int> Values => _value;

    public int Earliest(int activity) => _value[2 * activity];

    public int Latest(int activity) => -_value[(2 * activity) + 1];

    /// <summary>The earliest start before anything was found out.</summary>
    public int RootEarliest(int activity) => _rootEarliest[activity];

    public bool Holds(Statement statement) => statement.HoldsFor(_value);

    public bool IsFalse(Statement statement) => statement.IsFalseFor(_value);

    public ref readonly Step StepAt(int place) => ref _steps[place];

    /// <summary>Tries something: what follows from here on depends on it.</summary>
    public void Try(Statement statement)
    {
        _levels.Add(Count);
        TrySet(statement, default);
    }

    /// <returns>False when the opposite holds already.</returns>
    public bool TrySet(Statement statement, Reason reason)
    {
        if (Holds(statement))
            return true;
        if (IsFalse(statement))
        {
            Refused = (statement, reason);
            return false;
        }

        if (Count == _steps.Length)
            Array.Resize(ref _steps, 2 * Count);
        var side = statement.Side;
        Sum += statement.Least - _value[side];
        _steps[Count] = new(side, _value[side], statement.Least, _last[side], Level, reason);
        (_value[side], _last[side]) = (statement.Least, Count++);
        return true;
    }

    /// <summary>The step by which a statement that holds came to hold; below 0 when it did from the beginning.</summary>
    public int StepOf(Statement statement)
    {
        var step = _last[statement.Side];
        while (step >= 0 && _steps[step].Before >= statement.Least)
            step = _steps[step].Previous;
        return step;
    }

    /// <summary>The level at which a statement that holds came to hold; 0 when it does whatever is tried.</summary>
    public int LevelOf(Statement statement) => StepOf(statement) is >= 0 and var step ? _steps[step].Level : 0;

    /// <summary>The first step that <see cref="TakeBack"/> to a level takes back.</summary>
    public int FirstAbove(int level) => _levels[level];

    /// <param name="level">Of which all is kept, but nothing of those above.</param>
    public void TakeBack(int level)
    {
        var first = FirstAbove(level);
        while (Count > first)
        {
            ref readonly var step = ref _steps[--Count];
            Sum -= _value[step.Side] - step.Before;
            (_value[step.Side], _last[step.Side]) = (step.Before, step.Previous);
        }

        _levels.RemoveRange(level, Level - level);
    }
}

/// <summary>A side went from one value to a greater.</summary>
/// <param name="Previous">The step of the same side before this one; below 0 when there is none.</param>
internal readonly record struct Step(int Side, int Before, int After, int Previous, int Level, Reason Reason);
