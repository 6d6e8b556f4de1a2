using Refettle.Bench;

namespace Refettle.Tests.Bench;

/// <summary>Asks the catalogue as a user would.</summary>
internal static class Ask
{
    /// <summary>The answer to <c>preload torque=48Nm thread=M10</c>; fails the test when there is none.</summary>
    public static BenchAnswer Answer(string line)
    {
        var result = Result(line);
        Assert.True(result.IsGood, string.Join("\n", result.Faults));
        return result.Value;
    }

    public static Result<BenchAnswer> Result(string line)
    {
        var words = line.Split(' ');
        return BenchNumbers.Answer(words[0], words[1..]);
    }

    /// <summary>The first value, or the one of that name.</summary>
    public static double Value(string line, string? name = null)
    {
        var values = Answer(line).Values;
        return (name is null ? values[0] : values.Single(value => value.Name == name)).Value;
    }

    /// <summary>The difference is at most this share of the expected value.</summary>
    public static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= Math.Abs(expected) * share, $"expected {expected} ± {share:P2}, got {actual}");

    /// <summary>Equal to the digits printed: half a unit of the last digit of the text.</summary>
    public static void Printed(string expected, double actual)
    {
        var digits = expected.Contains('.') ? expected.Length - expected.IndexOf('.') - 1 : 0;
        var half = 0.5 * Math.Pow(10, -digits);
        Assert.True(Math.Abs(double.Parse(expected) - actual) <= half * 1.0001, $"expected {expected}, got {actual:R}");
    }
}
