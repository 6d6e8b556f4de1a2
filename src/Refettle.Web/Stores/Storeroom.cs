using Refettle.Access;
using Refettle.Logbook;
using Refettle.Stock;
using Refettle.Web.Garage;
using Refettle.Web.Words;

namespace Refettle.Web.Stores;

/// <summary>The stock of all cars in this browser: the open car's log, and the others' beside it.</summary>
public sealed class Storeroom(OpenCar open, ThisDevice device, ServerApi server, IKeeper keeper, TimeProvider clock) : IDisposable
{
    private const string CarsKey = "cars";
    private readonly Dictionary<string, Other> _others = [];
    private Folded? _folded;
    private int _written;

    private sealed record Folded(CarHistory? Of, int Written, Refettle.Stock.Shelf Shelf);

    private sealed record Other(CarLog Log, CurrentPlan Plan)
    {
        public CarHistory? History { get; set; }
    }

    /// <summary>The others' logs have been read.</summary>
    public bool IsOpen { get; private set; }

    public DateOnly Today => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    /// <summary>All cars that are known here, the open one first.</summary>
    public ValueList<CarHistory> Histories =>
        [.. open.History is { } history ? [history] : Array.Empty<CarHistory>(),
            .. _others.Where(other => other.Key != open.History?.Car.Id).Select(other => other.Value.History).OfType<CarHistory>()];

    /// <summary>Each car with the plan that is followed here, if any.</summary>
    public ValueList<(CarHistory History, Plan? Plan)> Plans => Histories.Select(history =>
        (history, history.Car.Id == open.History?.Car.Id ? open.Plan : _others.GetValueOrDefault(history.Car.Id)?.Plan.Plan)).ToValueList();

    /// <summary>A place on a car in words, with the car where there are several.</summary>
    /// <param name="thing"><c>part x</c> or <c>joint x</c>.</param>
    public string Place(string car, string thing) => Known(car) is { } known
        ? $"{CaptureWords.Thing(thing, new(known))}{(Histories.Count > 1 ? $", {known.Name}" : "")}"
        : $"{thing} of {car}";

    public string CarName(string car) => Known(car)?.Name ?? car;

    private Car? Known(string car) => Histories.FirstOrDefault(one => one.Car.Id == car)?.Car;

    /// <summary>The shelf, folded anew only when something was written.</summary>
    public Refettle.Stock.Shelf Shelf
    {
        get
        {
            if (_folded is null || !ReferenceEquals(_folded.Of, open.History) || _folded.Written != _written)
                _folded = new(open.History, _written, ShelfFold.Of(Histories));
            return _folded.Shelf;
        }
    }

    /// <summary>Reads the logs of the other cars: what is kept here at once, then what the server has.</summary>
    public async Task OpenAsync()
    {
        var reply = await server.CarsAsync();
        var cars = reply.IsGood ? reply.Value : await keeper.GetAsync<ValueList<ShelfCar>>(CarsKey) ?? [];
        foreach (var car in cars.Where(car => car.Id != open.History?.Car.Id))
        {
            if (!_others.TryGetValue(car.Id, out var other))
            {
                _others[car.Id] = other = new(new(car.Id, await device.NameAsync(), server, keeper, clock), new(car.Id, server, keeper));
                await other.Log.LoadAsync();
                await other.Plan.LoadAsync();
            }

            if (await other.Log.SyncAsync() || other.History is null)
                Fold(car.Id, other);
        }

        IsOpen = true;
    }

    /// <summary>Writes what happened into a car's log, unless something speaks against it.</summary>
    /// <returns>What speaks against it; then nothing is written.</returns>
    public async Task<ValueList<Fault>> WriteAsync(string car, IReadOnlyCollection<Happening> happenings)
    {
        if (Histories.FirstOrDefault(history => history.Car.Id == car) is not { } history)
            return [new($"car {car}", "its logbook is not here yet", "Wait until it is read.")];
        var faults = happenings.SelectMany(happening => HappeningCheck.Of(history, happening))
            .Where(fault => fault.Severity == Severity.Error).ToValueList();
        foreach (var happening in faults.Count > 0 ? [] : happenings)
        {
            if (car == open.History?.Car.Id)
                await open.WriteAsync(happening);
            else
                await _others[car].Log.WriteAsync(happening);
        }

        if (faults.Count == 0 && _others.TryGetValue(car, out var other) && car != open.History?.Car.Id)
        {
            Fold(car, other);
            await other.Log.SyncAsync().ForAWhileAsync(clock);
        }

        return faults;
    }

    /// <summary>Writes a piece of work, or says why it cannot be.</summary>
    public async Task<ValueList<Fault>> WriteAsync(string car, Result<ValueList<Happening>> work) =>
        work.IsGood ? await WriteAsync(car, work.Value) : work.Faults;

    public void Dispose()
    {
        foreach (var other in _others.Values)
            other.Log.Dispose();
    }

    private void Fold(string car, Other other)
    {
        if (other.Log.Entries.Count > 0)
            other.History = CarHistory.Of(car, other.Log.Entries, other.Log.Read);
        _written++;
    }
}
