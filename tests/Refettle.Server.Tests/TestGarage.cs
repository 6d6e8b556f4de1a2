using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Scope;
using Refettle.Solvers;
using Refettle.Storage;
using Refettle.Stuck;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests;

/// <summary>A running server on a free port of 127.0.0.1, with the small car in a logbook that is gone afterwards.</summary>
internal sealed partial class TestGarage : IAsyncDisposable
{
    private readonly string _folder;
    private readonly WebApplication _server;

    private TestGarage(string folder, LogbookStore logbook, WebApplication server) =>
        (_folder, Logbook, _server) = (folder, logbook, server);

    public LogbookStore Logbook { get; }

    public Uri Address => new(_server.Urls.First().Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal));

    /// <summary>Every route there is, with something in place of what varies, and some pages and files.</summary>
    public IReadOnlyList<string> Routes =>
    [
        .. _server.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(route => route.RoutePattern.RawText ?? "")
            .Where(pattern => !pattern.Contains('*', StringComparison.Ordinal)).Select(pattern => HoleInRoute().Replace(pattern, "x"))
            .Distinct(),
        "/", "/index.html", "/api/nothing", "/car/x/plan",
    ];

    /// <param name="planner">Null leaves the server without one.</param>
    /// <param name="kits">What can be added; by default the small kit.</param>
    public static async Task<TestGarage> OpenAsync(
        IAccessPlanner? planner, KitTable? kits = null, bool toNetwork = false, LadderSet? ladders = null, TimeProvider? clock = null)
    {
        var folder = Directory.CreateTempSubdirectory("refettle-").FullName;
        var logbook = LogbookStore.Open(Path.Combine(folder, "test.db"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        Assert.True(logbook.Write(SmallCar.Id, SmallCar.Happenings).IsGood);
        var server = RefettleHost.Build(new()
        {
            Clock = clock ?? TimeProvider.System,
            Logbook = logbook,
            Planner = planner,
            Scoper = planner is null ? null : new ScopePlanner(new ReducedSolver(new MixedIntegerSolver()), new MixedIntegerSolver()),
            Kits = kits?.Kits ?? SmallKit.All,
            Start = kits?.Start ?? Structure.Empty,
            Ladders = ladders ?? new([]),
            Photos = PhotoStore.Beside(logbook.Path),
            Names = logbook.Devices.Names,
            Devices = toNetwork ? logbook.Devices : null
        });
        await server.StartAsync();
        return new(folder, logbook, server);
    }

    public static Task<TestGarage> OpenAsync(KitTable? kits = null, bool toNetwork = false, LadderSet? ladders = null) =>
        OpenAsync(new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())), kits, toNetwork, ladders);

    /// <summary>The server is away; the logbook stays.</summary>
    public Task StopServingAsync() => _server.StopAsync();

    public async ValueTask DisposeAsync()
    {
        await _server.DisposeAsync();
        Logbook.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex HoleInRoute();
}
