using System.Net;
using Microsoft.AspNetCore.Diagnostics;
using Refettle.Access;
using Refettle.Kits;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Server.Api;
using Refettle.Server.Guards;
using Refettle.Server.Pairing;
using Refettle.Storage;
using Refettle.Storage.Certificates;
using Refettle.Storage.Pairing;
using Refettle.Stuck;
using Refettle.Timeline.Scheduling;
using Refettle.Web.Garage;

namespace Refettle.Server;

/// <summary>What the pages are served from.</summary>
public sealed record HostOptions
{
    /// <summary>The logbooks. They stay open; whoever opened them closes them.</summary>
    public required ILogbook Logbook { get; init; }

    /// <summary>Null leaves the heavy questions unanswered.</summary>
    public IAccessPlanner? Planner { get; init; }

    /// <summary>Tries for stuck joints; without any no joint is taken to be stuck in a timeline.</summary>
    public LadderSet Ladders { get; init; } = new([]);

    /// <summary>Makes what improves a first timeline.</summary>
    public Func<IScheduler> Scheduler { get; init; } = () => new FirstScheduler();

    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Null leaves questions about the scope unanswered.</summary>
    public IScopePlanner? Scoper { get; init; }

    /// <summary>What can be added to a car.</summary>
    public ValueList<Kit> Kits { get; init; } = [];

    /// <summary>What every new car begins with.</summary>
    public Structure Start { get; init; } = Structure.Empty;

    /// <summary>Where pictures are kept; null takes none.</summary>
    public PhotoStore? Photos { get; init; }

    /// <summary>TCP port; 0 takes a free one.</summary>
    public int Port { get; init; }

    /// <summary>Who may come in from other machines on the network; null listens on 127.0.0.1 only.</summary>
    public PairedDevices? Devices { get; init; }

    /// <summary>What the devices are called that wrote entries.</summary>
    public Func<DeviceNames> Names { get; init; } = () => DeviceNames.None;

    /// <summary>Also serves encrypted, at the port after <see cref="Port"/>, under this certificate; null does not.</summary>
    public OwnCertificate? Certificate { get; init; }
}

/// <summary>The server, put together: for its own program, for the command line, and for tests.</summary>
public static class RefettleHost
{
    /// <summary>A server that is built and not yet started. It listens on 127.0.0.1, and elsewhere
    /// only for devices that are paired.</summary>
    public static WebApplication Build(HostOptions options)
    {
        var builder = WebApplication.CreateEmptyBuilder(new()
        {
            ApplicationName = typeof(RefettleHost).Assembly.GetName().Name,
            ContentRootPath = AppContext.BaseDirectory,
        });
        Listen(builder.WebHost.UseKestrelCore().UseStaticWebAssets(), options);
        // What keeps the server from starting is told by whoever starts it, in one line.
        builder.Logging.AddSimpleConsole().SetMinimumLevel(LogLevel.Warning).AddFilter("Microsoft.Extensions.Hosting", LogLevel.None);
        builder.Services.AddRoutingCore();
        var doorway = options.Devices is { } devices ? Doorway.For(devices) : Doorway.Closed;
        builder.Services.AddSingleton(options.Logbook).AddSingleton(options.Clock).AddSingleton<Garage>().AddSingleton(doorway)
            .AddSingleton(new TimelineTools(options.Ladders, options.Scheduler, options.Clock));
        PairingRoutes.AddLimit(builder.Services);
        // A log of thousands of entries is a tenth as long so. No answer holds a secret beside what a
        // stranger sends, so its length tells nothing.
        builder.Services.AddResponseCompression(answers => (answers.EnableForHttps, answers.MimeTypes) = (true, ["application/json"]));
        if (options.Planner is { } planner)
            builder.Services.AddSingleton(planner);
        if (options.Scoper is { } scoper)
            builder.Services.AddSingleton(scoper);
        var app = builder.Build();
        Guard(app);
        Route(app, options, doorway);
        return app;
    }

    private static void Listen(IWebHostBuilder host, HostOptions options)
    {
        var address = options.Devices is null ? IPAddress.Loopback : IPAddress.Any;
        if (options.Certificate is { } own)
        {
            host.UseKestrelHttpsConfiguration().ConfigureKestrel(kestrel =>
            {
                kestrel.Listen(address, options.Port);
                kestrel.Listen(address, options.Port == 0 ? 0 : options.Port + 1, listen => listen.UseHttps(own.Certificate));
            });
        }
        else
        {
            host.UseUrls($"http://{address}:{options.Port}");
        }
    }

    private static void Guard(WebApplication app)
    {
        app.UseExceptionHandler(new ExceptionHandlerOptions { ExceptionHandler = Problems.Broke });
        app.Use(PageHeaders.Add);
        app.UseMiddleware<RequestGuard>();
        app.UseMiddleware<DeviceGate>();
        app.UseWhen(asked => asked.Request.Path.StartsWithSegments("/api"), api => api.UseResponseCompression());
        app.UseRouting();
        app.UseRateLimiter();
    }

    private static void Route(WebApplication app, HostOptions options, Doorway doorway)
    {
        var api = app.MapGroup("/api");
        api.MapGet("health",
            () => Results.Json(new { status = "ok", version = typeof(RefettleHost).Assembly.GetName().Version?.ToString(3) }));
        api.MapGet("kits", () => Results.Json(new KitTable(options.Start, options.Kits), ExchangeJson.Options));
        LogRoutes.Map(api, options.Names);
        QuestionRoutes.Map(api);
        PhotoRoutes.Map(api, options.Photos);
        PairingRoutes.Map(app, api, doorway, options.Certificate?.Authority);
        TimelineRoutes.Map(api);
        ScopeRoutes.Map(api);
        DiscoveryRoutes.Map(api, options.Kits);
        JudgingRoutes.Map(api, options.Ladders);
        SaleRoutes.Map(api);
        ForecastRoutes.Map(api);
        api.MapFallback("{**rest}",
            (string? rest) => Problems.Of(StatusCodes.Status404NotFound, $"There is no api/{rest}",
                "See the list of routes in the documentation."));
        app.MapStaticAssets();
        app.MapFallbackToFile("index.html");
    }
}
