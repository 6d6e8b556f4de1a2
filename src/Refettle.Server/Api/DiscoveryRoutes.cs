using Microsoft.AspNetCore.Mvc;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Discovery;
using Refettle.Kits;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Server.Guards;
using Refettle.Stock;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>By what entries change plan, basket and scope.</summary>
internal static class DiscoveryRoutes
{
    /// <summary>Longer nobody waits with a part in his hand; what is not worked out by then is told.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(6);

    /// <param name="kits">Those that may tell what is worth doing.</param>
    public static void Map(IEndpointRouteBuilder api, ValueList<Kit> kits)
    {
        api.MapPost("cars/{car}/since-open",
            (string car, HttpRequest request, Garage garage, [FromServices] IAccessPlanner? planner, CancellationToken left) =>
            QuestionRoutes.AnswerAsync<IAccessPlanner, SinceOpenAsked, SinceOpenAnswer>(car, request, garage, planner,
                (of, asked) => QuestionCheck.Of(of, new() { Goals = asked.Goals }),
                (planning, of, asked, stop) => new SinceOpenPlanner(planning)
                    .Of(new() { Car = of, Goals = asked.Goals, Kits = kits }, stop), left))
            .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));
        MapDifference(api);
    }

    private static void MapDifference(IEndpointRouteBuilder api) => api.MapPost("cars/{car}/difference", (
            string car, HttpRequest request, Garage garage, TimelineTools tools, [FromServices] IAccessPlanner? planner,
            [FromServices] IScopePlanner? scoper, CancellationToken left) =>
            QuestionRoutes.MadeAsync<DifferenceAsked, OutlookDifference>(car, request, garage, planner, "There is no difference to tell",
                (planning, history, asked) => Made(garage, history, asked, tools, new(planning, scoper), left), left))
        .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    private static Result<OutlookDifference> Made(
        Garage garage, CarHistory history, DifferenceAsked asked, TimelineTools tools, DiscoveryPlanner planner, CancellationToken left)
    {
        var entries = history.Lines.Select(line => line.Entry).ToList();
        var unknown = asked.Entries.Where(id => entries.All(entry => entry.Id != id)).ToList();
        if (unknown.Count > 0 || asked.Entries.Count == 0)
            return Result<OutlookDifference>.Bad(new Fault("entries", "they are not with the server yet", "Try again when they are sent."));
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(left);
        patience.CancelAfter(Patience);
        var others = garage.Others(history.Car.Id).ToList();
        var now = tools.Clock.GetCurrentInstant();
        OutlookQuestion Ask(CarHistory one) =>
            new() { History = one, Shelf = ShelfFold.Of([.. others, one]), Ladders = tools.Ladders, Now = now };
        var before = CarHistory.Of(history.Car.Id, entries.Where(entry => !asked.Entries.Contains(entry.Id)));
        return Result<OutlookDifference>.Good(planner.Of(Ask(before), Ask(history), patience.Token));
    }
}
