using Microsoft.AspNetCore.Components.WebAssembly.Services;
using Microsoft.Extensions.DependencyInjection;
using Refettle.Web.CloseUp;
using Refettle.Web.Garage;
using Refettle.Web.Stores;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Garage;

/// <summary>What the pages ask for, with a browser that keeps things in memory.</summary>
internal static class GarageServices
{
    public static void AddGarage(this IServiceCollection services, FaultyServer server) => services
        .AddSingleton(TimeProvider.System)
        .AddSingleton(server.Api)
        .AddSingleton<IKeeper>(new MemoryKeeper())
        .AddSingleton<IPhotoKeeper>(new MemoryPhotoKeeper())
        .AddSingleton<PhotoOutbox>()
        .AddSingleton<ThisDevice>()
        .AddSingleton<Lookout>()
        .AddSingleton<OpenCar>()
        .AddSingleton<LazyAssemblyLoader>()
        .AddSingleton<FurtherPart>()
        .AddSingleton<LadderShelf>()
        .AddSingleton<UndecidedTorques>()
        .AddSingleton<Storeroom>()
        .AddSingleton<TimelineBook>();
}
