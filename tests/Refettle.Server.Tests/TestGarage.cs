using System.Security.Cryptography;
using Microsoft.AspNetCore.Builder;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Solvers;
using Refettle.Storage;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests;

/// <summary>A running server on a free port of 127.0.0.1, with the small car in a logbook that is gone afterwards.</summary>
internal sealed class TestGarage : IAsyncDisposable
{
    private readonly string _folder;
    private readonly WebApplication _server;

    private TestGarage(string folder, LogbookStore logbook, WebApplication server) => (_folder, Logbook, _server) = (folder, logbook, server);

    public LogbookStore Logbook { get; }

    public Uri Address => new(_server.Urls.First());

    /// <param name="planner">Null leaves the server without one.</param>
    /// <param name="kits">What can be added; by default the small kit.</param>
    public static async Task<TestGarage> OpenAsync(IAccessPlanner? planner, KitTable? kits = null)
    {
        var folder = Directory.CreateTempSubdirectory("refettle-").FullName;
        var logbook = LogbookStore.Open(Path.Combine(folder, "test.db"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        Assert.True(logbook.Write(SmallCar.Id, SmallCar.Happenings).IsGood);
        var server = RefettleHost.Build(new() { Logbook = logbook, Planner = planner, Kits = kits?.Kits ?? SmallKit.All, Start = kits?.Start ?? Structure.Empty });
        await server.StartAsync();
        return new(folder, logbook, server);
    }

    public static Task<TestGarage> OpenAsync(KitTable? kits = null) => OpenAsync(new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())), kits);

    public async ValueTask DisposeAsync()
    {
        await _server.DisposeAsync();
        Logbook.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
