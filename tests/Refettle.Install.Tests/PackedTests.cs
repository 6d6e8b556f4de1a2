using System.Text.RegularExpressions;

namespace Refettle.Install.Tests;

/// <summary>What is handed out works from any folder, without a checkout and without .NET beside it.</summary>
public sealed partial class PackedTests(Packed packed) : IClassFixture<Packed>
{
    [Fact]
    public void It_finds_its_kits_ladders_and_solver()
    {
        var (code, said) = packed.Run("doctor");
        Assert.True(code == 0, said);
        Assert.DoesNotContain("WRONG", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_makes_the_demo_and_serves_the_pages()
    {
        using var serving = packed.Start("demo", "--serve", "--port", "0");
        try
        {
            var address = await AddressAsync(serving.StandardOutput);
            using var http = new HttpClient { BaseAddress = new(address) };
            Assert.Contains("blazor.webassembly.js", await http.GetStringAsync("/"), StringComparison.Ordinal);
            Assert.Contains("heron", await http.GetStringAsync("/api/cars"), StringComparison.Ordinal);
            Assert.True((await http.GetByteArrayAsync("/_framework/blazor.webassembly.js")).Length > 10_000);
        }
        finally
        {
            serving.Kill();
        }
    }

    private static async Task<string> AddressAsync(StreamReader output)
    {
        while (await output.ReadLineAsync() is { } line)
        {
            if (Address().Match(line) is { Success: true } found)
                return found.Value;
        }

        throw new InvalidOperationException("It ended without serving.");
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
