using Refettle.Bench;

namespace Refettle.Judging;

/// <summary>Whether a reading can be what it is called: in a unit of that kind, and not below nothing.</summary>
public static class ReadingCheck
{
    private static readonly Dimension[] _neverBelowNothing =
        [Dimension.Length, Dimension.Area, Dimension.Volume, Dimension.Mass, Dimension.Time, Dimension.Force, Dimension.Torque,
            Dimension.SpringRate];

    /// <summary>Words of what has a sign though it is a length: which way it goes.</summary>
    private static readonly string[] _signed = ["toe", "offset", "flush", "difference", "deviation", "change", "step"];

    public static ValueList<Fault> Of(Car car, string thing, MeasuredValue reading)
    {
        if (Units.Find(reading.Unit) is not { } unit)
            return [];
        if (UnitOf(car, thing, reading.What) is { } expected && expected.Dimension != unit.Dimension)
            return [new(reading.What, $"it is measured in {expected.Symbol}, and {unit.Symbol} is said",
                $"Give it in {expected.Symbol} or a unit like it, or call by its name what was measured.")];
        return reading.Values.Any(value => value < 0) && _neverBelowNothing.Contains(unit.Dimension)
            && !_signed.Any(word => reading.What.Contains(word, StringComparison.OrdinalIgnoreCase))
            ? [new(reading.What, $"{reading.Values.Min()} {unit.Symbol} is less than nothing",
                "Give 0 or more. What goes both ways, say by its name: an offset, a difference, toe.")]
            : [];
    }

    /// <summary>The unit of its limit on this car, else of the test that is known by that name; null where neither is.</summary>
    private static Unit? UnitOf(Car car, string thing, string what) =>
        (car.Limits.FirstOrDefault(limit => limit.Of == thing && IsSame(limit.What, what))?.Unit
            ?? ConditionScales.All.SelectMany(scale => scale.Tests).FirstOrDefault(form => IsSame(form.What, what))?.Unit) is { } named
                ? Units.Find(named)
                : null;

    private static bool IsSame(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
