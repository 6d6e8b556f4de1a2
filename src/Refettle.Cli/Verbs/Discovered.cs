using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Extensions;
using Refettle.Discovery;
using Refettle.Stock;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

/// <summary>Tells, after something was recorded, by what that changes plan, basket and scope.</summary>
internal static class Discovered
{
    /// <summary>Longer nobody waits with a part in his hand; what is not worked out by then is told.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(4);

    /// <summary>The reply with the difference after it. Inside a script whose replies nobody reads it is left out.</summary>
    public static Reply With(Desk desk, OpenCar before, OpenCar now, Reply reply)
    {
        if (desk.IsQuiet || reply.Code != ExitCode.Good || desk.Ladders() is not { IsGood: true, Value: var ladders })
            return reply;
        using var patience = new CancellationTokenSource(Patience, desk.Around.Clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(patience.Token, desk.Around.Interrupt);
        var others = desk.All(before.Logbook).Where(car => car.Car.Id != now.Car.Id).Select(car => car.History).ToList();
        var moment = desk.Around.Clock.GetCurrentInstant();
        OutlookQuestion Ask(OpenCar car) => new()
        {
            History = car.History,
            Shelf = ShelfFold.Of([.. others, car.History]),
            Ladders = ladders,
            Now = moment,
        };
        var difference = new DiscoveryPlanner(desk.Planner, desk.Scoper).Of(Ask(before), Ask(now), either.Token);
        var data = JsonSerializer.SerializeToNode(reply.Data, ExchangeJson.Options)!.AsObject();
        data["difference"] = JsonSerializer.SerializeToNode(difference, ExchangeJson.Options);
        return reply with { Shown = new Rows(reply.Shown, new Text(DifferenceWords.Of(now.Car, difference))), Data = data };
    }
}
