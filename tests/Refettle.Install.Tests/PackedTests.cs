using System.Text.RegularExpressions;

namespace Refettle.Install.Tests;

/// <summary>What is handed out works from any folder, without a checkout and without .NET beside it.</summary>
[Collection(AsServed.Name)]
public sealed partial class PackedTests(Served served)
{
    [Fact]
    public void It_finds_its_kits_ladders_and_solver()
    {
        var (code, said) = served.Run("doctor");
        Assert.True(code == 0, said);
        Assert.DoesNotContain("WRONG", said, StringComparison.Ordinal);
    }

    [Fact]
    public void The_tool_package_can_be_installed_and_finds_them_too()
    {
        var (installed, how) = served.InstallTool();
        Assert.True(installed == 0, how);
        var (code, said) = served.RunTool("doctor");
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
        Assert.InRange(await FirstLoadAsync(http), 500_000, FirstLoadTests.MostBytes);
    }

    /// <summary>What a browser fetches to show the first page, packed as a phone takes it: the page, what it names, and
    /// what the program's own list names.</summary>
    private static async Task<long> FirstLoadAsync(HttpClient http)
    {
        var page = await http.GetStringAsync("/");
        var program = await http.GetStringAsync("/_framework/dotnet.js");
        string[] names = ["/index.html", "/_framework/dotnet.js", .. Named().Matches(page).Select(match => $"/{match.Groups[1].Value}"),
            .. Resource().Matches(program).Select(match => $"/_framework/{match.Groups[1].Value}")];
        Assert.True(names.Length > 30, string.Join(' ', names));
        var total = 0L;
        foreach (var name in names.Except(Fetched.Behind(program)))
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, name) { Headers = { { "Accept-Encoding", "br" } } };
            using var answer = await http.SendAsync(request);
            answer.EnsureSuccessStatusCode();
            total += (await answer.Content.ReadAsByteArrayAsync()).Length;
        }

        return total;
    }

    /// <summary>Files that the page itself names.</summary>
    [GeneratedRegex("(?:src|href)=\"([^\"]+\\.(?:js|css|svg))\"")]
    private static partial Regex Named();

    /// <summary>Names in the list of the program's files.</summary>
    [GeneratedRegex("\"name\": *\"([^\"]+\\.(?:js|wasm|dat))\"")]
    private static partial Regex Resource();
}
