namespace Refettle.Install.Tests;

/// <summary>What is handed out works from any folder, without a checkout and without .NET beside it.</summary>
[Collection(AsServed.Name)]
public sealed class PackedTests(Served served)
{
    [Fact]
    public void It_finds_its_kits_ladders_and_solver()
    {
        var (code, said) = served.Run("doctor");
        Assert.True(code == 0, said);
        Assert.DoesNotContain("WRONG", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_makes_the_demo_and_serves_the_pages()
    {
        using var http = new HttpClient { BaseAddress = served.Address };
        Assert.Contains("blazor.webassembly.js", await http.GetStringAsync("/"), StringComparison.Ordinal);
        Assert.Contains("heron", await http.GetStringAsync("/api/cars"), StringComparison.Ordinal);
        Assert.True((await http.GetByteArrayAsync("/_framework/blazor.webassembly.js")).Length > 10_000);
    }
}
