namespace Refettle.Bench;

/// <summary>Something that a bench number wants to know.</summary>
public abstract record Input
{
    /// <summary>The key it is given by: <c>torque</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string Says { get; init; }

    /// <summary>What is accepted, range and unit or the choices: <c>0.1 to 2000 N·m</c>.</summary>
    public required string Accepts { get; init; }

    /// <summary>The unit of the value and its range; null for what is no quantity, or any quantity.</summary>
    public Unit? Unit { get; init; }

    /// <summary>The words to choose from; empty when it is no choice.</summary>
    public ValueList<string> Words { get; init; } = [];

    /// <summary>The text that stands in when it is not given; null when there is none.</summary>
    public string? Default { get; init; }

    /// <summary>Where the default comes from.</summary>
    public string? DefaultOrigin { get; init; }

    /// <summary>The number can be had without it.</summary>
    public bool IsOptional { get; init; }

    /// <summary>Must be given: no default stands in and the number cannot be had without it.</summary>
    public bool IsRequired => Default is null && !IsOptional;

    /// <summary>Reads what was written into <paramref name="given"/>.</summary>
    /// <returns>What is wrong with it, or nothing.</returns>
    internal abstract ValueList<Fault> Read(string text, Given given);
}

/// <summary>An input whose value is a <typeparamref name="T"/>; see <see cref="Inputs"/> for the kinds.</summary>
public sealed record Input<T> : Input
    where T : notnull
{
    /// <summary>Turns text into the value, or says what is wrong with it.</summary>
    public required Func<string, Result<T>> Reader { get; init; }

    /// <summary>The same input with a value that stands in when none is given.</summary>
    public Input<T> Or(string text, string origin) => this with { Default = text, DefaultOrigin = origin };

    /// <summary>The same input, not required.</summary>
    public Input<T> Optional() => this with { IsOptional = true };

    internal override ValueList<Fault> Read(string text, Given given)
    {
        var result = Reader(text);
        if (result.IsGood)
            given.Set(Name, result.Value);
        return result.Faults;
    }
}
