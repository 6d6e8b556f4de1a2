using System.CommandLine;
using NodaTime.Extensions;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Sheets;
using Refettle.Stock;
using Refettle.Storage;
using Refettle.Stuck;
using Refettle.Timeline.Spells;

namespace Refettle.Cli;

/// <summary>What the verbs of one run share: the store, the car that is spoken of, the planner. Each is opened when first needed.</summary>
internal sealed class Desk(Surroundings around, Func<IReadOnlyList<string>, ExitCode> run) : IDisposable
{
    private readonly Dictionary<string, OpenCar> _cars = [];
    private readonly Lazy<IAccessPlanner> _planner = new(around.Planner);
    private readonly Lazy<IScopePlanner> _scoper = new(around.Scoper);
    private IGarageStore? _logbook;
    private Result<KitShelf>? _kits;
    private string? _path;
    private string? _spokenOf;
    private string _folder = "";

    public Surroundings Around => around;

    /// <summary>Inside a script good replies are kept to themselves when nobody wants to read them.</summary>
    public bool IsQuiet { get; set; }

    public IAccessPlanner Planner => _planner.Value;

    public IScopePlanner Scoper => _scoper.Value;

    /// <summary>Runs one line as the shell would.</summary>
    public ExitCode Run(IReadOnlyList<string> words) => run(words);

    /// <summary>A path as the user means it: beside the script that is running, if one is.</summary>
    public string PathOf(string path) => Path.Combine(_folder, path);

    /// <summary>Until disposed of, paths are beside this file.</summary>
    public IDisposable Beside(string file)
    {
        var before = _folder;
        _folder = Path.GetDirectoryName(file) ?? "";
        return new Ending(() => _folder = before);
    }

    /// <summary>The kits, all of them read. Faulty ones are left out and told of in the notes.</summary>
    public Result<KitShelf> Kits() =>
        SoundKits() is { IsGood: true } kits ? Result<KitShelf>.Good(kits.Value, kits.Value.Faults) : SoundKits();

    /// <summary>The kits without word of faulty ones, for verbs that want one kit or none.</summary>
    public Result<KitShelf> SoundKits() => _kits ??= KitShelf.Load(Path.Combine(around.Content, "kits"));

    /// <summary>The ladders of tries for stuck joints.</summary>
    public Result<LadderSet> Ladders() => LadderReader.Load(Path.Combine(around.Content, "ladders"));

    /// <summary>Answers with the store; it is made when there is none.</summary>
    public Reply WithLogbook(ParseResult parsed, Func<IGarageStore, Reply> answer)
    {
        var path = parsed.GetValue<string>(GlobalOptions.Store) ?? around.Store;
        var logbook = Logbook(path);
        return logbook.IsGood ? answer(logbook.Value) : Reply.Bad(logbook.Faults, ExitCode.Store);
    }

    /// <summary>Answers with the car of <c>--car</c>, else the one spoken of before, else the one written to last.</summary>
    public Reply WithCar(ParseResult parsed, Func<OpenCar, Reply> answer) => WithLogbook(parsed, logbook =>
    {
        var cars = logbook.Cars();
        var asked = parsed.GetValue<string>(GlobalOptions.Car) ?? _spokenOf ?? cars.MaxBy(car => car.LastPosition)?.Id;
        if (asked is null)
            return Reply.Bad([new("store", "there is no car in it", "Begin one: refettle new NAME. Or make the demo: refettle demo.")]);
        if (cars.All(car => car.Id != asked))
            return Reply.Bad([new($"car {asked}", "it is not in the store",
                NearNames.Ask(asked, cars.Select(car => car.Id), "refettle cars lists what is there."))]);
        _spokenOf = asked;
        return answer(Open(logbook, asked));
    });

    /// <summary>Writes what happened once nothing speaks against it, and answers with the car as it stands then.</summary>
    public Reply Record(OpenCar open, IReadOnlyList<Happening> happenings, Func<OpenCar, Reply> answer)
    {
        var faults = Faults(open.History, happenings).ToList();
        if (faults.Any(fault => fault.Severity == Severity.Error))
            return Reply.Bad(faults);
        var written = open.Logbook.Write(open.Car.Id, happenings);
        if (!written.IsGood)
            return Reply.Bad(written.Faults, ExitCode.Store);
        var now = Reopen(open.Logbook, open.Car.Id, [.. open.Entries, .. written.Value]);
        var reply = answer(now);
        return reply with { Faults = [.. faults, .. reply.Faults] };
    }

    /// <summary>What speaks against them, each seen on the car as those before it leave it.</summary>
    private static IEnumerable<Fault> Faults(CarHistory history, IEnumerable<Happening> happenings)
    {
        foreach (var happening in happenings)
        {
            foreach (var fault in HappeningCheck.Of(history, happening))
                yield return fault;
            if (happening is StructureAdded added)
                history = history with { Car = history.Car with { Structure = history.Car.Structure.With(added.Added, added.Tied) } };
        }
    }

    /// <summary>The clock on the wall where a car stands.</summary>
    public WallClock WallOf(Car car) => WallClock.Of(car.Calendar, around.Clock.GetCurrentInstant());

    public DateOnly Today => DateOnly.FromDateTime(around.Clock.GetLocalNow().DateTime);

    /// <summary>The shelf, when the car is one of the store; null for one from a sheet.</summary>
    public Shelf? Shelf(ParseResult parsed, Car car)
    {
        Shelf? shelf = null;
        if (_cars.TryGetValue(car.Id, out var open) && ReferenceEquals(open.Car, car))
            WithLogbook(parsed,
                logbook => { shelf = ShelfFold.Of(All(logbook).Select(one => one.History)); return Reply.Said("", new { }); });
        return shelf;
    }

    /// <summary>All cars of the store: the shelf is one for all of them.</summary>
    public ValueList<OpenCar> All(IGarageStore logbook) => logbook.Cars().Select(car => Open(logbook, car.Id)).ToValueList();

    /// <summary>Opens a car that has no entries yet; following lines speak of it.</summary>
    public OpenCar Begin(IGarageStore logbook, string car) => Open(logbook, _spokenOf = car);

    /// <summary>A plan's exit code: whether it exists, and whether the search was let finish.</summary>
    public ExitCode CodeOf(Plan plan) => plan.Status switch
    {
        PlanStatus.Optimal => ExitCode.Good,
        _ when around.Interrupt.IsCancellationRequested => ExitCode.Interrupted,
        PlanStatus.Impossible => ExitCode.Impossible,
        _ => ExitCode.Good,
    };

    public void Dispose() => _logbook?.Dispose();

    private Result<IGarageStore> Logbook(string path)
    {
        if (_logbook is not null && _path == path)
            return Result<IGarageStore>.Good(_logbook);
        var opened = around.OpenLogbook(path);
        if (!opened.IsGood)
            return opened;
        _logbook?.Dispose();
        _cars.Clear();
        (_logbook, _path, _spokenOf) = (opened.Value, path, null);
        return opened;
    }

    private OpenCar Open(IGarageStore logbook, string car) =>
        _cars.TryGetValue(car, out var open) ? open : Reopen(logbook, car, [.. logbook.Read(car).Select(kept => kept.Entry)]);

    private OpenCar Reopen(IGarageStore logbook, string car, ValueList<Entry> entries) =>
        _cars[car] = new(logbook, entries, CarHistory.Of(car, entries));
}

/// <summary>Does something when disposed of.</summary>
internal sealed class Ending(Action end) : IDisposable
{
    public void Dispose() => end();
}

/// <summary>A car with its log.</summary>
internal sealed record OpenCar(IGarageStore Logbook, ValueList<Entry> Entries, CarHistory History)
{
    public Car Car => History.Car;
}
