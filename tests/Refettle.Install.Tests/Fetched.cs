using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Refettle.Install.Tests;

/// <summary>What a page fetched, by name: each file once, with its bytes as they first came over the wire, headers included. So the figure
/// is the same whenever one looks.</summary>
internal sealed partial class Fetched
{
    private readonly Dictionary<string, string> _nameOf = [];
    private readonly Dictionary<string, long> _bytes = [];

    public static async Task<Fetched> WatchAsync(IBrowserContext context, IPage page)
    {
        var fetched = new Fetched();
        var network = await context.NewCDPSessionAsync(page);
        network.Event("Network.requestWillBeSent").OnEvent += (_, message) => fetched.Asked(message!.Value);
        network.Event("Network.loadingFinished").OnEvent += (_, message) => fetched.Came(message!.Value);
        await network.SendAsync("Network.enable");
        return fetched;
    }

    /// <summary>The files that the program fetches behind its first page, by the program's own list.</summary>
    public static HashSet<string> Behind(string program)
    {
        var names = Name().Matches(FetchedBehind().Match(program).Value).Select(match => $"/_framework/{match.Groups[1].Value}")
            .ToHashSet();
        Assert.True(names.Count > 0,
            "The program's list names nothing that is fetched behind the first page: is it written otherwise now?");
        return names;
    }

    public long Bytes(Func<string, bool> counts) => _bytes.Where(one => counts(one.Key)).Sum(one => one.Value);

    private void Asked(JsonElement message) =>
        _nameOf[message.GetProperty("requestId").GetString()!] = new Uri(message.GetProperty("request").GetProperty("url")
            .GetString()!).AbsolutePath;

    private void Came(JsonElement message)
    {
        if (_nameOf.TryGetValue(message.GetProperty("requestId").GetString()!, out var name))
            _bytes.TryAdd(name, (long)message.GetProperty("encodedDataLength").GetDouble());
    }

    [GeneratedRegex("\"lazyAssembly\": *\\[[^\\]]*\\]")]
    private static partial Regex FetchedBehind();

    [GeneratedRegex("\"name\": *\"([^\"]+)\"")]
    private static partial Regex Name();
}
