using Refettle.Bench;

namespace Refettle.Cli.Tests.Verbs;

public sealed class NumbersVerbTests : IDisposable
{
    private readonly Bench _bench = new();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void Every_number_is_listed_and_its_example_works()
    {
        var list = _bench.Out("numbers");
        foreach (var number in BenchNumbers.All)
        {
            Assert.Contains(number.Name, list, StringComparison.Ordinal);
            Assert.True(_bench.Run(["numbers", number.Name, .. number.Example.Split(' ')]) == ExitCode.Good, _bench.Error);
        }
    }

    [Fact]
    public void An_answer_has_its_range_formula_source_and_the_makers_precedence()
    {
        var text = _bench.Out("numbers", "preload", "torque=48Nm", "thread=M10", "class=8.8", "k=0.20");
        // 48 N·m / (0.20 · 10 mm) = 24.0 kN, ±35 % after NSTS 08307 Rev A.
        Assert.Contains("preload: 24000 N (15600 to 32400 N)", text, StringComparison.Ordinal);
        Assert.Contains("F = T / (K · d)", text, StringComparison.Ordinal);
        Assert.Contains("NSTS 08307", text, StringComparison.Ordinal);
        Assert.Contains("maker's figure comes first", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Blanks_before_a_unit_and_another_unit_for_the_answer()
    {
        var text = _bench.Out("numbers", "adapter", "torque=50", "lbf·ft", "lever=16", "in", "offset=2", "in", "--in", "lbf·ft");
        Assert.Contains("44.44 lbf·ft", text, StringComparison.Ordinal); // a tool maker's manual prints 44.44
    }

    [Fact]
    public void Cautions_stand_out() =>
        Assert.Contains("Caution: Above the proof load",
            _bench.Out("numbers", "preload", "torque=48Nm", "thread=M10", "class=8.8", "k=0.12"), StringComparison.Ordinal);

    [Fact]
    public void What_one_takes_is_shown_with_ranges()
    {
        var text = _bench.Out("numbers", "preload");
        Assert.Contains("0.1 to 2000", text, StringComparison.Ordinal);
        Assert.Contains("refettle numbers preload torque=48Nm", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_end_with_their_code_and_the_range()
    {
        Assert.Equal(ExitCode.Faults, _bench.Run("numbers", "preload", "torque=48mm"));
        Assert.Contains("0.1 to 2000 N·m", _bench.Error, StringComparison.Ordinal);
        Assert.Contains("thread", _bench.Error, StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, _bench.Run("numbers", "preload", "torque=48Nm", "thread=M10", "--in", "mm"));
        Assert.Equal(ExitCode.Faults, _bench.Run("numbers", "preloud"));
        Assert.Contains("preload", _bench.Error, StringComparison.Ordinal);
    }
}
