namespace Refettle.Cli.Tests.Views;

/// <summary>What a person sees, compared with what was looked at and found good. To approve anew, run with
/// REFETTLE_APPROVE=1 and look at the difference.</summary>
public sealed class ApprovedTests
{
    [Theory]
    [InlineData("reach", "reach", "free(axle)")]
    [InlineData("reach-without", "reach", "free(axle)", "--without", "damper")]
    [InlineData("holds", "holds", "axle")]
    [InlineData("why", "why", "off(wheel)", "--for", "free(damper)")]
    [InlineData("within", "within", "off(wheel)")]
    [InlineData("others", "others", "off(damper)")]
    [InlineData("compare", "compare", "free(damper)", "--with", "free(axle)")]
    [InlineData("show", "show")]
    [InlineData("show-joint", "show", "joint", "damper-foot")]
    [InlineData("check", "check")]
    [InlineData("open-up", "open-up", "damper-foot", "damper-top")]
    public void An_answer_looks_as_approved(string name, params string[] words)
    {
        using var bench = new Bench();
        var shown = bench.Out([.. words, "--sheet", bench.Sheet]).ReplaceLineEndings("\n");
        var file = Path.Combine("Views", $"{name}.approved.txt");
        if (Environment.GetEnvironmentVariable("REFETTLE_APPROVE") is not null)
            File.WriteAllText(Path.Combine(Content.Folder(AppContext.BaseDirectory), "tests", "Refettle.Cli.Tests", file), shown);
        Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, file)).ReplaceLineEndings("\n"), shown);
    }
}
