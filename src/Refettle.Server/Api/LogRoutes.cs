using Refettle.Logbook;
using Refettle.Server.Guards;
using Refettle.Server.Pairing;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The log: which cars there are, their entries, and taking in new ones.</summary>
internal static class LogRoutes
{
    private const long MostBytes = 40_000_000;

    /// <param name="names">What writers of entries are called.</param>
    public static void Map(IEndpointRouteBuilder api, Func<DeviceNames> names)
    {
        api.MapGet("cars", (ILogbook logbook) => Results.Json(logbook.Cars(), ExchangeJson.Options));
        api.MapGet("cars/{car}/entries", Entries);
        api.MapGet("writers", () => Results.Json(names(), ExchangeJson.Options));
        api.MapPost("cars/{car}/entries", TakeAsync).WithMetadata(new BodyLimit(MostBytes));
    }

    private static IResult Entries(string car, ILogbook logbook, Garage garage, long after = 0) =>
        garage.LastPosition(car) is { } last
            ? Results.Json(Page(logbook, car, after, last), ExchangeJson.Options)
            : Problems.NoSuchCar(car);

    /// <summary>An entry may arrive between looking and reading; the page names what it holds, so that nothing is missed.</summary>
    private static EntryPage Page(ILogbook logbook, string car, long after, long last)
    {
        var kept = logbook.Read(car, after).ToArray();
        return new(kept.Select(one => one.Entry).ToValueList(), kept.Length == 0 ? last : kept.Max(one => one.Position));
    }

    private static async Task<IResult> TakeAsync(
        string car, HttpRequest request, ILogbook logbook, Doorway doorway, CancellationToken cancel)
    {
        var sent = await Body.ReadAsync<ValueList<Entry>>(request, cancel);
        if (!sent.IsGood)
            return Problems.Of(sent.Faults[0]);
        var faults = sent.Value.SelectMany(entry => Wrong(entry, car)).ToArray();
        var taken = faults.Length > 0 ? Result<int>.Bad(faults) : logbook.Append(sent.Value);
        if (taken.IsGood && DeviceGate.Of(request, doorway.Devices) is { } sender)
            doorway.Devices!.Wrote(sender, sent.Value.Select(entry => entry.Device));
        return taken.IsGood
            ? Results.Json(new EntriesKept(taken.Value), ExchangeJson.Options)
            : Problems.Of(StatusCodes.Status422UnprocessableEntity, "The logbook did not take the entries",
                "None was taken. See the faults.", taken.Faults);
    }

    private static ValueList<Fault> Wrong(Entry entry, string car) => entry.Car == car
        ? EntryCheck.Of(entry)
        : [new($"entry {entry.Id}", $"it is about {entry.Car}, not {car}", "Send each car's entries to its own address.")];
}
