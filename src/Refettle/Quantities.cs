namespace Refettle;

/// <summary>A person's working time, in minutes, 0 to 100 000.</summary>
public readonly record struct Minutes(decimal Value) : IComparable<Minutes>
{
    public const decimal Max = 100_000;

    public static Minutes Zero => default;

    public int CompareTo(Minutes other) => Value.CompareTo(other.Value);

    public override string ToString() => Value < 120 ? $"{Value:0.##} min" : $"{Value / 60:0.0#} h";

    public static Minutes operator +(Minutes left, Minutes right) => new(left.Value + right.Value);

    public static Minutes operator -(Minutes left, Minutes right) => new(left.Value - right.Value);

    public static bool operator <(Minutes left, Minutes right) => left.Value < right.Value;

    public static bool operator >(Minutes left, Minutes right) => left.Value > right.Value;

    public static bool operator <=(Minutes left, Minutes right) => left.Value <= right.Value;

    public static bool operator >=(Minutes left, Minutes right) => left.Value >= right.Value;
}

/// <summary>An amount of money in the car's currency, 0 or more.</summary>
public readonly record struct Money(decimal Amount)
{
    public override string ToString() => $"{Amount:0.00}";
}

/// <summary>Mass in kilograms, more than 0.</summary>
public readonly record struct Kilograms(decimal Value)
{
    public override string ToString() => $"{Value:0.##} kg";
}

/// <summary>Length in millimetres, more than 0.</summary>
public readonly record struct Millimetres(decimal Value)
{
    public override string ToString() => $"{Value:0.##} mm";
}

/// <summary>Torque in newton metres, more than 0.</summary>
public readonly record struct NewtonMetres(decimal Value)
{
    public override string ToString() => $"{Value:0.##} N·m";
}
