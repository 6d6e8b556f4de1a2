namespace Refettle.Bench;

/// <summary>The values of a number's inputs, read and checked, each in the unit of its input.</summary>
public sealed class Given
{
    private readonly Dictionary<string, object> _values = [];

    /// <summary>The value of an input that is required or has a default.</summary>
    public T Of<T>(Input<T> input)
        where T : notnull => (T)_values[input.Name];

    /// <summary>Whether an optional input was given.</summary>
    public bool Has(Input input) => _values.ContainsKey(input.Name);

    /// <summary>The value of an optional quantity, or null.</summary>
    public double? Maybe(Input<double> input) => Has(input) ? Of(input) : null;

    internal void Set(string name, object value) => _values[name] = value;
}
