using NodaTime;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Timeline.Spells;
using Refettle.Web.Edits;
using Refettle.Web.Steps;
using Refettle.Web.Words;

namespace Refettle.Web.Garage;

/// <summary>The car that the pages show: its log, what the log folds to, and the plan that is followed.</summary>
public sealed class OpenCar(ServerApi server, IKeeper keeper, ThisDevice device, Lookout lookout, PhotoOutbox photos, TimeProvider clock)
    : IDisposable
{
    private const string NamesKey = "names";
    private string? _id;
    private Task _opened = Task.CompletedTask;
    private CarLog? _log;
    private CurrentPlan? _plan;

    /// <summary>Something that is shown may have changed.</summary>
    public event Action? Changed;

    public bool Opening { get; private set; }

    public CarHistory? History { get; private set; }

    /// <summary>The car as it stands; null until its logbook is open.</summary>
    public CarLookup? Car { get; private set; }

    /// <summary>What the clock on the wall shows where the car stands.</summary>
    public LocalDateTime Now => WallClock.Of(Car!.Car.Calendar, clock.GetCurrentInstant()).At(0);

    /// <summary>What it showed when something happened; this device's own clock while nobody has said where the car's hangs.</summary>
    public LocalDateTime When(DateTimeOffset at) =>
        Car!.Car.Calendar.TimeZone is null
            ? LocalDateTime.FromDateTime(at.LocalDateTime)
            : WallClock.Of(Car.Car.Calendar, clock.GetCurrentInstant()).At(at);

    public Question? Question => _plan?.Question;

    public Plan? Plan => _plan?.Plan;

    public bool Asking => _plan?.Asking ?? false;

    /// <summary>The plan was worked out in this browser.</summary>
    public bool PlannedOnDevice => _plan?.OnDevice ?? false;

    public bool Stale => _plan?.Stale ?? false;

    public PlanProgress? Progress { get; private set; }

    public int Waiting => _log?.Waiting ?? 0;

    /// <summary>Pictures that are kept in this browser and not yet with the server.</summary>
    public int WaitingPhotos => photos.Waiting;

    public bool IsReached => _log?.IsReached ?? true;

    public ValueList<Fault> Faults => [.. _log?.Faults ?? [], .. photos.Faults, .. PlanFaults];

    /// <summary>This device's clock is not that of the garage's machine.</summary>
    public Fault? Clock => ClockDoubts.OfThisDevice(server.Ahead);

    /// <summary>What the devices are called that wrote entries, as the server said last.</summary>
    public DeviceNames Names { get; private set; } = DeviceNames.None;

    /// <summary>Where clocks contradict each other in the log.</summary>
    public ValueList<Fault> ClocksApart =>
        History is { } history
            ? ClockDoubts.Of(history, clock.GetUtcNow()).Select(doubt => doubt.Says(_log!.Device, Names)).ToValueList()
            : [];

    /// <summary>Without a network the plan on hand stays good, so that alone is no fault.</summary>
    private ValueList<Fault> PlanFaults => _plan is { Plan: not null } && !IsReached ? [] : _plan?.Faults ?? [];

    public bool IsWaiting(Guid entry) => _log?.IsWaiting(entry) ?? false;

    /// <summary>Opens a car's logbook: what is kept here at once, then what the server has.</summary>
    /// <returns>When both are here, or the server was asked in vain; for who asks while it is being opened too.</returns>
    public Task OpenAsync(string id)
    {
        if (_id != id)
            _opened = OpenAnewAsync(id);
        return _opened;
    }

    /// <summary>Begins a car. It is kept here and sent like any other entry.</summary>
    public async Task BeginAsync(string id, IEnumerable<Happening> first)
    {
        using var log = await LogAsync(id);
        foreach (var happening in first)
            await log.WriteAsync(happening);
    }

    /// <summary>What forbids to write this; notes do not.</summary>
    public ValueList<Fault> Against(params IEnumerable<Happening> happenings) =>
        happenings.SelectMany(happening => HappeningCheck.Of(History!, happening)).Where(fault => fault.Severity == Severity.Error)
            .ToValueList();

    /// <summary>Marks a step, unless something forbids it.</summary>
    /// <returns>What forbids it, or what of it is odd though it was written.</returns>
    public async Task<ValueList<Fault>> MarkAsync(Happening mark)
    {
        var found = HappeningCheck.Of(History!, mark);
        if (found.All(fault => fault.Severity != Severity.Error))
            await WriteAsync(mark);
        return found;
    }

    /// <summary>Writes what happened and shows it at once; sending it is tried afterwards.</summary>
    /// <returns>The identifier of the entry.</returns>
    public async Task<Guid> WriteAsync(Happening happening)
    {
        var entry = await _log!.WriteAsync(happening);
        Fold();
        await SyncAsync().ForAWhileAsync(clock);
        return entry.Id;
    }

    /// <summary>Adds to the description, or replaces in it, unless that brings in an error; then nothing is written.</summary>
    public async Task<ValueList<Fault>> DescribeAsync(Structure added)
    {
        var faults = Description.NewFaults(Car!.Car.Structure, added).Where(fault => fault.Severity == Severity.Error).ToValueList();
        if (faults.Count == 0)
            await WriteAsync(new StructureAdded("edit", added, []));
        return faults;
    }

    /// <summary>Strikes an entry; striking a strike restores what it struck.</summary>
    public Task StrikeAsync(Guid entry) => WriteAsync(new Struck(entry, null));

    public async Task AskAsync(Question? question)
    {
        var asked = question is null ? _plan!.ClearAsync() : _plan!.AskAsync(Car!.Car, question);
        Show();
        await asked;
        Show();
    }

    public async Task FollowAsync(Plan plan)
    {
        await _plan!.FollowAsync(plan);
        Show();
    }

    public void Dispose() => _log?.Dispose();

    /// <summary>The page comes first: what waits to be sent is looked up once it is there. Who goes on to another
    /// car meanwhile is not led back.</summary>
    private async Task OpenAnewAsync(string id)
    {
        (_id, Opening, _log, _plan, History, Car, Progress) = (id, true, null, null, null, null, null);
        var (log, plan) = (await LogAsync(id), new CurrentPlan(id, server, keeper));
        await log.LoadAsync();
        await plan.LoadAsync();
        if (_id != id)
            return;
        (_log, _plan) = (log, plan);
        Fold();
        await photos.LoadAsync();
        Names = await keeper.GetAsync<DeviceNames>(NamesKey) ?? DeviceNames.None;
        await log.SyncAsync();
        if (_log != log)
            return;
        Opening = false;
        Fold();
        await lookout.BeginAsync(() => Opening ? Task.CompletedTask : SyncAsync());
        await LearnNamesAsync();
        await SendPhotosAsync();
    }

    private async Task<CarLog> LogAsync(string id) => new(id, await device.NameAsync(), server, keeper, clock);

    private async Task SyncAsync()
    {
        if (_log is { } log && await log.SyncAsync())
            Fold();
        else
            Show();
        await SendPhotosAsync();
    }

    private async Task LearnNamesAsync()
    {
        if (await server.NamesAsync() is not { IsGood: true } told)
            return;
        Names = told.Value;
        await keeper.PutAsync(NamesKey, told.Value);
    }

    private async Task SendPhotosAsync()
    {
        await photos.SendAsync();
        Show();
    }

    private void Fold()
    {
        if (_log!.Entries.Count > 0)
        {
            var before = Car?.Car;
            History = CarHistory.Of(_id!, _log.Entries, _log.Read);
            Car = new(History.Car);
            if (before is not null && !(before.Structure == Car.Car.Structure && before.Unsound.Equals(Car.Car.Unsound)))
                _ = _plan!.MarkStaleAsync();
        }

        Show();
    }

    private void Show()
    {
        Progress = Plan is { } plan && Car is { } car ? PlanProgress.Of(plan, car) : null;
        Changed?.Invoke();
    }
}
