using System.Text.RegularExpressions;

namespace Refettle.Install.Tests;

/// <summary>What is handed out works from any folder, without a checkout and without .NET beside it.</summary>
public sealed partial class PackedTests(Packed packed) : IClassFixture<Packed>
{
    /// <summary>The most that the first load may take, in bytes; the aim is 3,000,000.</summary>
    private const long MostBytes = 2_950_000;

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
            Assert.InRange(await FirstLoadAsync(http), 500_000, MostBytes);
        }
        finally
        {
            serving.Kill();
        }
    }

    /// <summary>What a browser fetches to show the first page, packed as a phone takes it: the page, what it names, and what the program's own list names.</summary>
    private static async Task<long> FirstLoadAsync(HttpClient http)
    {
        var page = await http.GetStringAsync("/");
        var program = FetchedBehind().Replace(await http.GetStringAsync("/_framework/dotnet.js"), "");
        string[] names = ["index.html", "_framework/dotnet.js", .. Named().Matches(page).Select(match => match.Groups[1].Value), .. Resource().Matches(program).Select(match => $"_framework/{match.Groups[1].Value}")];
        Assert.True(names.Length > 30, string.Join(' ', names));
        var total = 0L;
        foreach (var name in names.Distinct())
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, $"/{name}") { Headers = { { "Accept-Encoding", "br" } } };
            using var answer = await http.SendAsync(request);
            answer.EnsureSuccessStatusCode();
            total += (await answer.Content.ReadAsByteArrayAsync()).Length;
        }

        return total;
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

    /// <summary>Files that the page itself names.</summary>
    [GeneratedRegex("(?:src|href)=\"([^\"]+\\.(?:js|css|svg))\"")]
    private static partial Regex Named();

    /// <summary>The files in the program's list that it fetches behind the first page.</summary>
    [GeneratedRegex("\"lazyAssembly\": *\\[[^\\]]*\\]")]
    private static partial Regex FetchedBehind();

    /// <summary>Names in the list of the program's files.</summary>
    [GeneratedRegex("\"name\": *\"([^\"]+\\.(?:js|wasm|dat))\"")]
    private static partial Regex Resource();

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
