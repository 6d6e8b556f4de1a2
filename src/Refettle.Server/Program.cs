using System.Security.Cryptography;
using Microsoft.Extensions.Configuration;
using Refettle;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Scope;
using Refettle.Server;
using Refettle.Sheets;
using Refettle.Solvers;
using Refettle.Solvers.Scheduling;
using Refettle.Storage;

var settings = new ConfigurationBuilder().AddCommandLine(args).Build();
using var random = RandomNumberGenerator.Create();
var store = LogbookStore.Open(settings["store"] ?? "refettle.db", TimeProvider.System, random);
var shelf = KitShelf.Load(settings["kits"] ?? Path.Combine(AppContext.BaseDirectory, "kits"));
var ladders = LadderReader.Load(settings["ladders"] ?? Path.Combine(AppContext.BaseDirectory, "ladders"));
if (!store.IsGood || !shelf.IsGood)
{
    foreach (var fault in store.Faults.Concat(shelf.Faults))
        Console.Error.WriteLine(fault);
    return 1;
}

using var logbook = store.Value;
await using var server = RefettleHost.Build(new()
{
    Logbook = logbook,
    Planner = new AccessPlanner(new ReducedSolver(new MixedIntegerSolver())),
    Scheduler = () => new ConstraintScheduler(),
    Scoper = new ScopePlanner(new ReducedSolver(new MixedIntegerSolver()), new MixedIntegerSolver()),
    Kits = shelf.Value.Kits,
    Ladders = ladders.IsGood ? ladders.Value : new([]),
    Start = shelf.Value.Start,
    Photos = logbook.Photos,
    Names = logbook.Devices.Names,
    Port = int.TryParse(settings["port"], out var port) ? port : 5188,
});
await server.StartAsync();
Console.WriteLine($"Open {server.Urls.First()} in a browser. Ctrl-C ends it.");
await server.WaitForShutdownAsync();
return 0;
