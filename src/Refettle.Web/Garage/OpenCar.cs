using Refettle.Access;
using Refettle.CloseUp;
using Refettle.Logbook;
using Refettle.Web.Edits;
using Refettle.Web.Steps;
using Refettle.Web.Words;

namespace Refettle.Web.Garage;

/// <summary>The car that the pages show: its log, what the log folds to, and the plan that is followed.</summary>
public sealed class OpenCar(ServerApi server, IKeeper keeper, PhotoOutbox photos, TimeProvider clock) : IDisposable
{
    private const string DeviceKey = "device";
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(15);
    private string? _id;
    private CarLog? _log;
    private CurrentPlan? _plan;
    private CancellationTokenSource _leave = new();
    private bool _watching;

    /// <summary>Something that is shown may have changed.</summary>
    public event Action? Changed;

    public bool Opening { get; private set; }

    public CarHistory? History { get; private set; }

    /// <summary>The car as it stands; null until its logbook is open.</summary>
    public CarLookup? Car { get; private set; }

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

    /// <summary>Where clocks contradict each other in the log.</summary>
    public ValueList<Fault> ClocksApart => History is not { } history ? [] : ClockDoubts.Ahead(_log!.Entries, clock.GetUtcNow())
        .Concat(ClockDoubts.Backward(history.Lines.Select(line => line.Entry))).Select(doubt => doubt.Says(_log.Device)).ToValueList();

    public bool IsWaiting(Guid entry) => _log?.IsWaiting(entry) ?? false;

    /// <summary>Without a network the plan on hand stays good, so that alone is no fault.</summary>
    private ValueList<Fault> PlanFaults => _plan is { Plan: not null } && !IsReached ? [] : _plan?.Faults ?? [];

    /// <summary>Opens a car's logbook: what is kept here at once, then what the server has.</summary>
    public async Task OpenAsync(string id)
    {
        if (_id == id)
            return;
        Leave();
        (_id, Opening) = (id, true);
        var plan = _plan = new(id, server, keeper);
        var log = _log = new(id, await DeviceAsync(), server, keeper, clock);
        await log.LoadAsync();
        await plan.LoadAsync();
        await photos.LoadAsync();
        Fold();
        await log.SyncAsync();
        Opening = false;
        Fold();
        await WatchAsync();
        await SendPhotosAsync();
    }

    /// <summary>Begins a car. It is kept here and sent like any other entry.</summary>
    public async Task BeginAsync(string id, IEnumerable<Happening> first)
    {
        using var log = new CarLog(id, await DeviceAsync(), server, keeper, clock);
        foreach (var happening in first)
            await log.WriteAsync(happening);
    }

    /// <summary>Writes what happened and shows it at once; sending it is tried afterwards.</summary>
    /// <returns>The identifier of the entry.</returns>
    public async Task<Guid> WriteAsync(Happening happening)
    {
        var entry = await _log!.WriteAsync(happening);
        Fold();
        await SyncAsync();
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

    /// <summary>Marks a step done, or takes the mark back.</summary>
    public Task TickAsync(int step)
    {
        var (fact, way) = (Plan!.Steps[step].Fact, Plan.Steps[step].Way);
        var isStance = Car!.IsStance(fact);
        if (!Progress!.Done[step])
            return WriteAsync(isStance ? new StanceTaken(fact.Subject) : new StepDone(fact, way.Length == 0 ? null : way, null));
        return LastMark(fact, isStance) is { } mark
            ? WriteAsync(new Struck(mark.Entry.Id, null))
            : isStance ? Task.CompletedTask : WriteAsync(new StepReversed(fact, null));
    }

    /// <summary>Strikes an entry; striking a strike restores what it struck.</summary>
    public Task StrikeAsync(Guid entry) => WriteAsync(new Struck(entry, null));

    /// <summary>Strikes the newest mark of a step that still counts and that this device or another made.</summary>
    public Task UndoAsync()
    {
        var mark = History?.Lines.LastOrDefault(line => line.Standing == Standing.InForce && line.Happening is StepDone or StanceTaken);
        return mark is null ? Task.CompletedTask : StrikeAsync(mark.Entry.Id);
    }

    /// <summary>Takes back what was put back last.</summary>
    public async Task UndoClosingAsync()
    {
        foreach (var mark in LastClosed.Of(History!))
            await StrikeAsync(mark);
    }

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

    public void Dispose() => Leave();

    private HistoryLine? LastMark(Fact fact, bool isStance) => History!.Lines.LastOrDefault(line =>
        line.Standing == Standing.InForce && (isStance
            ? line.Happening is StanceTaken taken && taken.Stance == fact.Subject
            : line.Happening is StepDone done && done.Fact == fact));

    /// <summary>This browser's name in the entries that it writes; made when it is first asked for.</summary>
    internal async Task<string> DeviceAsync()
    {
        if (await keeper.GetAsync<string>(DeviceKey) is { } known)
            return known;
        var made = $"browser-{Guid.CreateVersion7(clock.GetUtcNow()):n}";
        await keeper.PutAsync(DeviceKey, made);
        return made;
    }

    private async Task WatchAsync()
    {
        if (!_watching)
            await keeper.WatchNetworkAsync(SyncAsync);
        _watching = true;
        _ = LookAgainAsync(_leave.Token);
    }

    private async Task LookAgainAsync(CancellationToken left)
    {
        using var timer = new PeriodicTimer(Look, clock);
        try
        {
            while (await timer.WaitForNextTickAsync(left))
                await SyncAsync();
        }
        catch (OperationCanceledException)
        {
            return;
        }
    }

    private async Task SyncAsync()
    {
        if (_log is { } log && await log.SyncAsync())
            Fold();
        else
            Show();
        await SendPhotosAsync();
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
            var before = Car?.Car.Structure;
            History = CarHistory.Of(_id!, _log.Entries, _log.Read);
            Car = new(History.Car);
            if (before is not null && before != Car.Car.Structure)
                _ = _plan!.MarkStaleAsync();
        }

        Show();
    }

    private void Show()
    {
        Progress = Plan is { } plan && Car is { } car ? PlanProgress.Of(plan, car) : null;
        Changed?.Invoke();
    }

    private void Leave()
    {
        _leave.Cancel();
        _leave.Dispose();
        _leave = new();
        _log?.Dispose();
        (History, Car, Progress, _id) = (null, null, null, null);
    }
}
