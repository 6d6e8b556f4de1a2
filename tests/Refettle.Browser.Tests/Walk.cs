using Microsoft.Playwright;
using Refettle.Sheets;

namespace Refettle.Browser.Tests;

/// <summary>The tour over every page at one screen, walked once for all that is looked at there: a walk takes
/// longer than most of the looking.</summary>
public abstract class Walk : IAsyncLifetime
{
    internal const string Complaint = "complaint";

    private readonly Bench _bench = new();
    private readonly List<(string Check, string Fault)> _faults = [];
    private string? _broken;

    private protected abstract BrowserNewContextOptions Screen { get; }

    public async Task InitializeAsync()
    {
        if (!File.Exists(Chromium.Program))
            return;
        await _bench.InitializeAsync();
        await using var visit =
            await _bench.VisitAsync(Screen, toNetwork: true, ladders: LadderReader.Load(Path.Combine(Repository.Root, "ladders")).Value);
        var last = "";
        try
        {
            await Tour.WalkAsync(visit, name => LookAsync(visit, last = name));
        }
        catch (Exception problem) when (problem is TimeoutException or PlaywrightException)
        {
            _broken = $"The walk broke off after {last}: {problem}\n{await visit.ToldAsync()}";
        }

        foreach (var complaint in visit.Complaints)
            Tell(Complaint, "console", [complaint]);
    }

    public Task DisposeAsync() => _bench.DisposeAsync();

    /// <summary>No page had a fault of this kind, and every page was seen.</summary>
    internal void IsClean(string check)
    {
        string[] found =
            [.. _faults.Where(one => one.Check == check).Select(one => one.Fault), .. _broken is null ? [] : new[] { _broken }];
        Assert.True(found.Length == 0, string.Join("\n", found));
    }

    /// <summary>Looks at a page and tells what is wrong.</summary>
    private protected abstract Task LookAsync(Visit visit, string name);

    private protected void Tell(string check, string page, IEnumerable<string> faults) =>
        _faults.AddRange(faults.Select(fault => (check, $"{page}: {fault}")));
}
