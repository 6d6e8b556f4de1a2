namespace Refettle.Cli.Tests.Verbs;

public sealed class CloseUpVerbTests : IDisposable
{
    private readonly Bench _bench = new Bench().WithCar();

    public void Dispose() => _bench.Dispose();

    [Fact]
    public void A_bush_blocks_the_road_until_it_is_torqued_on_its_wheels()
    {
        Good("set", "joint", "damper-foot", "at-ride-height=true", "torque=60 N·m");
        Good("height", "rl", "15 in");
        Good("stance", "on-stands");
        Good("done", "open(damper-foot)");
        Assert.Contains("joint damper-foot: open", _bench.Out("ready"), StringComparison.Ordinal);
        Good("snugged", "damper-foot");
        Assert.Contains("snug only", _bench.Out("ready"), StringComparison.Ordinal);
        Good("torqued", "damper-foot", "--at", "60Nm");
        Assert.Contains("wheels hanging", _bench.Out("ready"), StringComparison.Ordinal);
        Good("stance", "on-wheels");
        Assert.Contains("paint-marked, checked by a second person",
            _bench.Out("torqued", "damper-foot", "--at", "44.25 lbf·ft", "--with", "wrench 20 to 100", "--by", "me", "--check",
                "paint-mark", "second-person").ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("Nothing by the log", _bench.Out("ready"), StringComparison.Ordinal);
        Assert.Contains("59.99 N·m", _bench.Out("log"), StringComparison.Ordinal); // 44.25 · 1.35581795
        Assert.Equal(381, _bench.Json("ready").GetProperty("heights")[0].GetProperty("millimetres").GetDecimal()); // 15 × 25.4
    }

    [Fact]
    public void What_stays_off_on_purpose_is_one_of_the_car_s_things()
    {
        Good("done", "open(damper-foot)");
        Assert.Contains("Nothing by the log", _bench.Out("ready", "--left-off", "damper-foot"), StringComparison.Ordinal);
        Assert.Contains("joint damper-foot: open", _bench.Out("ready", "--left-off", "part damper"), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, _bench.Run("ready", "--left-off", "damper-fot"));
        Assert.Contains("damper-foot", _bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Wheel_angles_are_recorded_and_a_contradiction_is_kept_out()
    {
        Assert.Contains("thrust line 0.10° to the right, with laser rig, by me",
            _bench.Out("alignment", "found", "--rl", "toe 0.20 camber -0.50", "--rr", "toe 0", "--thrust", "0.1deg", "--with", "laser rig",
                "--by", "me").ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Faults, _bench.Run("alignment", "set", "--rl", "toe 0.20", "--rr", "toe 0", "--thrust", "-0.1deg"));
        Assert.Equal(ExitCode.Faults, _bench.Run("alignment", "later", "--rl", "toe 0.20"));
    }

    [Fact]
    public void A_joint_is_tightened_in_stages_once_its_thread_is_known()
    {
        Good("set", "joint", "wheel-nuts", "torque=85 N·m");
        Assert.Contains("Asked: How will the thread be fitted", _bench.Out("tighten", "wheel-nuts"), StringComparison.Ordinal);
        var text = _bench.Out("tighten", "wheel-nuts", "--fitted", "dry");
        Assert.Contains("Order: 1 3 5 2 4", text, StringComparison.Ordinal);
        Assert.Contains("3. 51 N·m, in order", text, StringComparison.Ordinal);
        Assert.Contains("51 N·m instead of 85 N·m",
            _bench.Out("tighten", "wheel-nuts", "--for", "dry", "--fitted", "anti-seize").ReplaceLineEndings(" "),
            StringComparison.Ordinal); // 85 · 0.12/0.20
    }

    [Fact]
    public void Torques_that_contradict_each_other_are_shown_until_an_entry_decides()
    {
        var (other, here, there) = (_bench.Beside("other.db"), _bench.Beside("here.jsonl"), _bench.Beside("there.jsonl"));
        Good("export-log", here);
        Good("import-log", here, "--store", other);
        Good("torqued", "wheel-nuts", "--at", "85Nm", "--by", "me");
        Good("torqued", "wheel-nuts", "--at", "105Nm", "--store", other);
        Good("export-log", there, "--store", other);
        Good("import-log", there);
        var told = _bench.Json("show", "joint", "wheel-nuts").GetProperty("undecided").GetProperty("told");
        Assert.Equal([85, 105], told.EnumerateArray().Select(one => one.GetProperty("torque").GetDecimal()).Order());
        var text = _bench.Out("show", "joint", "wheel-nuts").ReplaceLineEndings(" ");
        Assert.All(["Undecided", "85 N·m, by me, 20", "105 N·m, by somebody at "],
            words => Assert.Contains(words, text, StringComparison.Ordinal));
        Good("strike",
            told.EnumerateArray().Single(one => one.GetProperty("torque").GetDecimal() == 105).GetProperty("entry").GetString()![^8..]);
        Assert.DoesNotContain("Undecided", _bench.Out("show", "joint", "wheel-nuts"), StringComparison.Ordinal);
        Assert.False(_bench.Json("show", "joint", "wheel-nuts").TryGetProperty("undecided", out _));
    }

    [Theory]
    [InlineData("tighten", "wheel-nut")]
    [InlineData("tighten", "wheel-nuts", "--fitted", "wet")]
    [InlineData("tighten", "wheel-nuts", "--rows", "2")]
    [InlineData("tighten", "wheel-nuts", "--angle", "90mm")]
    [InlineData("torqued", "wheel-nut")]
    [InlineData("torqued", "wheel-nuts", "--at", "60")]
    [InlineData("torqued", "wheel-nuts", "--at", "-1Nm")]
    [InlineData("height", "front", "382mm")]
    [InlineData("height", "fl", "382")]
    [InlineData("height", "fl", "9m")]
    [InlineData("look", "above")]
    public void Mistakes_end_with_one_clear_word_each(params string[] words)
    {
        Assert.Equal(ExitCode.Faults, _bench.Run(words));
        Assert.NotEmpty(_bench.Error);
    }

    private void Good(params string[] words) =>
        Assert.True(_bench.Run(words) == ExitCode.Good, $"{string.Join(' ', words)}: {_bench.Error}");
}
