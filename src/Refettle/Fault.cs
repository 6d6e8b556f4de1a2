namespace Refettle;

/// <summary>How bad a fault is.</summary>
public enum Severity
{
    /// <summary>Worth knowing; the answer stands.</summary>
    Note,

    /// <summary>Nothing is computed or kept until it is mended.</summary>
    Error,
}

/// <summary>One thing wrong with what was given: where, what was found, what would be right.</summary>
/// <param name="Place">The thing at fault: <c>joint rl-damper-lower</c>, or a file's line.</param>
/// <param name="Found">What was found there.</param>
/// <param name="Mend">What to do.</param>
public sealed record Fault(string Place, string Found, string Mend)
{
    public Severity Severity { get; init; } = Severity.Error;

    /// <summary>Line in the file, from 1; 0 when there is no file.</summary>
    public int Line { get; init; }

    /// <summary>Column in the line, from 1; 0 when there is no file.</summary>
    public int Column { get; init; }

    /// <summary>The file; empty when there is none or it is plain which.</summary>
    public string File { get; init; } = "";

    /// <summary>Where inside the thing at <see cref="Place"/>, by the keys of the car sheet: <c>holds[1]</c>, <c>ways[0].clear[2]</c>;
    /// empty for the whole of it.</summary>
    public string Path { get; init; } = "";

    public override string ToString() => $"{Mark}{Place}: {Found}. {Mend}";

    private string Mark => (File, Line) switch
    {
        ("", 0) => "",
        ("", _) => $"line {Line}, column {Column}: ",
        (_, 0) => $"{File}: ",
        _ => $"{File}:{Line}:{Column}: ",
    };
}

/// <summary>A value, or all the faults that kept it from being made.</summary>
public sealed record Result<T>
{
    private readonly T? _value;

    private Result(T? value, ValueList<Fault> faults, bool isGood) => (_value, Faults, IsGood) = (value, faults, isGood);

    public bool IsGood { get; }

    /// <summary>Every fault found; on a good result, notes only.</summary>
    public ValueList<Fault> Faults { get; }

    /// <exception cref="InvalidOperationException">There is no value: ask <see cref="IsGood"/> first.</exception>
    public T Value => IsGood ? _value! : throw new InvalidOperationException("No value: " + string.Join("; ", Faults));

    public static Result<T> Good(T value, params IEnumerable<Fault> notes) => new(value, notes.ToValueList(), true);

    public static Result<T> Bad(params IEnumerable<Fault> faults) => new(default, faults.ToValueList(), false);
}
