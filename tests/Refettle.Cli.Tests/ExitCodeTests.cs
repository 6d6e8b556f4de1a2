using Refettle.Access;

namespace Refettle.Cli.Tests;

public sealed class ExitCodeTests
{
    [Fact]
    public void Nothing_asked_shows_the_help()
    {
        using var bench = new Bench();
        Assert.Contains("reach", bench.Out(), StringComparison.Ordinal);
        Assert.Equal(ExitCode.Good, bench.Run());
    }

    [Theory]
    [InlineData("raech", "Did you mean reach?")]
    [InlineData("frobnicate", "refettle --help")]
    public void An_unknown_verb_is_a_usage_fault_with_the_nearest(string verb, string says)
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Usage, bench.Run(verb));
        Assert.Contains(says, bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_with_the_name_of_a_verb_can_be_spoken_of_before_the_verb()
    {
        using var bench = new Bench();
        bench.Run("new", "stock");
        Assert.True(bench.Run("--car", "stock", "show", "parts") == ExitCode.Good, bench.Error);
    }

    [Fact]
    public void An_unknown_option_is_a_usage_fault_with_the_nearest()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Usage, bench.Run("holds", "x", "--shet", "y"));
        Assert.Contains("Did you mean --sheet?", bench.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--minutes is x, which is not a number", "done", "off(axle)", "--minutes", "x")]
    [InlineData("refettle why --help", "why", "off(axle)")]
    [InlineData("refettle reach --help", "reach")]
    [InlineData("refettle task add --help", "task", "add")]
    public void A_command_line_that_lacks_something_says_what(string says, params string[] words)
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Usage, bench.Run(words));
        Assert.Contains(says, bench.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_port_that_cannot_be_is_a_fault()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Faults, bench.Run("serve", "--port", "99999"));
    }

    [Theory]
    [InlineData("axle", "Is it 'free(axle)' or 'off(axle)' that you mean?")]
    [InlineData("gone(axle)", "Write it as free(part)")]
    [InlineData("free(axel)", "axle")]
    public void A_goal_that_names_nothing_is_a_fault(string goal, string says)
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Faults, bench.Run("reach", goal, "--sheet", bench.Sheet));
        Assert.Contains(says, bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_reached_says_so()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Impossible, bench.Run("reach", "free(axle)", "--sheet", bench.Sheet, "--without", "damper"));
    }

    [Fact]
    public void A_file_that_is_no_store_is_store_trouble()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Store,
            bench.Run("cars", "--store", bench.File("text.db", "This is not a database, but it is longer than a header would be.")));
        Assert.Contains("text.db", bench.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_for_a_store_is_called_one()
    {
        using var bench = new Bench();
        Assert.Equal(ExitCode.Store, bench.Run("cars", "--store", AppContext.BaseDirectory));
        Assert.Contains("this is a folder, not a file", bench.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("verify")]
    [InlineData("script")]
    [InlineData("import-log")]
    [InlineData("spell", "import")]
    public void A_file_that_is_something_else_is_named(params string[] verb)
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run([.. verb, bench.File("other.txt", "BEGIN:VCALENDAR\nsay \"unclosed\n")]));
        Assert.Contains("other.txt", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Less_than_one_step_is_refused()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("refit", "--first", "-2"));
        Assert.Contains("Give 1 or more.", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistake_in_the_program_is_one_line_without_a_stack()
    {
        using var bench = new Bench(() => throw new InvalidOperationException("twisted\nspline"));
        Assert.Equal(ExitCode.Bug, bench.Run("reach", "free(axle)", "--sheet", bench.Sheet));
        Assert.Single(bench.Error.Trim().Split('\n'));
        Assert.Contains("twisted spline", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void An_interrupted_search_shows_what_it_has()
    {
        using var interrupt = new CancellationTokenSource();
        using var bench = new Bench(() => new Interrupted(interrupt), interrupt: interrupt.Token);
        Assert.Contains("a valid plan; none can cost less than 3 min", bench.Out("reach", "free(axle)", "--sheet", bench.Sheet),
            StringComparison.Ordinal);
        Assert.Equal(ExitCode.Interrupted, bench.Run("reach", "free(axle)", "--sheet", bench.Sheet));
    }

    /// <summary>A planner that is interrupted while it works.</summary>
    private sealed class Interrupted(CancellationTokenSource source) : IAccessPlanner
    {
        public Plan Reach(Car car, Question question, CancellationToken cancel = default)
        {
            source.Cancel();
            return new() { Question = question, Status = PlanStatus.Feasible, Bound = new(3) };
        }

        public WithinAnswer Within(Car car, Question question, int most = 20, CancellationToken cancel = default) =>
            throw new NotSupportedException();

        public ValueList<OtherPlan> Others(Car car, Question question, int most = 3, CancellationToken cancel = default) =>
            throw new NotSupportedException();

        public Comparison Compare(Car car, Question first, ValueList<Fact> second, CancellationToken cancel = default) =>
            throw new NotSupportedException();
    }
}
