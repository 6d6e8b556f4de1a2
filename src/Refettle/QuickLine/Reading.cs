using Refettle.Logbook;

namespace Refettle.QuickLine;

/// <summary>What a line tells of.</summary>
public enum LineKind
{
    /// <summary>Words to be kept about a thing, or about the car.</summary>
    Note,

    /// <summary>The condition of a part.</summary>
    Finding,

    /// <summary>A try at a joint that would not open.</summary>
    Try,

    /// <summary>A part came off, a joint was opened.</summary>
    Done,

    /// <summary>A part is back, a joint closed.</summary>
    Back,

    /// <summary>A joint was tightened.</summary>
    Tightened,

    /// <summary>The ride height of a corner.</summary>
    Height,

    BagPacked,
    BagMoved,
    BagEmptied,
}

/// <summary>One way to understand a line. Nothing is written before the user has seen it.</summary>
public sealed record Reading
{
    public required LineKind Kind { get; init; }

    /// <summary>What it is about: <c>part x</c>, <c>joint x</c>, <c>bag 14</c>, <c>corner rl</c>; null for the whole car.</summary>
    public string? About { get; init; }

    /// <summary>Further bags of which it tells the same: <c>bag 15</c>.</summary>
    public ValueList<string> Also { get; init; } = [];

    /// <summary>How well the words of the line fit the thing, 0 to 1: a share of words, no probability.</summary>
    public double Fit { get; init; }

    /// <summary>Pieces needed new; null when not said.</summary>
    public int? Need { get; init; }

    /// <summary>The scale of a finding, and its word; null when the line says none plainly: then it is kept as a note.</summary>
    public string? Scale { get; init; }

    public string? Condition { get; init; }

    /// <summary>The rung of a try; null when no method was named.</summary>
    public string? Rung { get; init; }

    /// <summary>What the joint became by the try; null when it held.</summary>
    public JointCondition? Becomes { get; init; }

    public bool IsSoaked { get; init; }

    public Minutes? Took { get; init; }

    public NewtonMetres? Torque { get; init; }

    public Tightness How { get; init; }

    public Millimetres? Height { get; init; }

    /// <summary>What is in the bag, or where it lies, in the words of the line.</summary>
    public string? Words { get; init; }

    /// <summary>What the bag belongs to: <c>joint x</c>, <c>part x</c>.</summary>
    public ValueList<string> For { get; init; } = [];
}

/// <summary>A line and the ways to understand it, best first. There is always one: in the end a note.</summary>
/// <param name="Unread">Words of the line that the best reading does not say; they are kept in a note.</param>
public sealed record LineAnswer(string Line, ValueList<Reading> Readings, ValueList<string> Unread)
{
    public Reading Best => Readings[0];
}
