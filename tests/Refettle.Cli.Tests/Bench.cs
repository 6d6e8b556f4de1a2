using System.Text.Json;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Cli.Tests;

/// <summary>A shell of its own with a store of its own, that is thrown away afterwards.</summary>
internal sealed class Bench : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("refettle-cli-").FullName;
    private readonly StringWriter _shown = new();
    private readonly StringWriter _error = new();
    private readonly List<IDisposable> _stores = [];

    public Bench(Func<IAccessPlanner>? planner = null, TimeProvider? clock = null, CancellationToken interrupt = default) => Around = new()
    {
        Out = _shown,
        Error = _error,
        Clock = clock ?? TimeProvider.System,
        Planner = planner ?? (() => new AccessPlanner(new ReducedSolver())),
        OpenLogbook = path => Kept(Cli.Store.Open(path)),
        Store = Path.Combine(_folder, "store.db"),
        Content = Cli.Content.Folder(AppContext.BaseDirectory),
        Interrupt = interrupt,
    };

    public Surroundings Around { get; init; }

    public string Sheet { get; } = Path.Combine(AppContext.BaseDirectory, "Cars", "corner.yaml");

    /// <summary>How the last command ended.</summary>
    public ExitCode Code { get; private set; }

    public string Error => _error.ToString();

    /// <summary>Runs one command in a shell of its own, as from a terminal.</summary>
    public ExitCode Run(params string[] words)
    {
        _shown.GetStringBuilder().Clear();
        _error.GetStringBuilder().Clear();
        return Code = new Shell(Around).Run(words);
    }

    public string Out(params string[] words)
    {
        Run(words);
        return _shown.ToString();
    }

    public JsonElement Json(params string[] words) => JsonDocument.Parse(Out([.. words, "--json"])).RootElement;

    /// <summary>A car with the parts of the sheet in the store.</summary>
    public Bench WithCar()
    {
        Assert.Equal(ExitCode.Good, Run("new", "Corner"));
        Assert.True(Run("sheet", Sheet) == ExitCode.Good, Error);
        return this;
    }

    /// <summary>A path beside the store.</summary>
    public string Beside(string name) => Path.Combine(_folder, name);

    public string File(string name, string text)
    {
        var path = Beside(name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    public void Dispose()
    {
        foreach (var store in _stores)
            store.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private Result<IGarageStore> Kept(Result<IGarageStore> opened)
    {
        if (opened.IsGood)
            _stores.Add(opened.Value);
        return opened;
    }
}
