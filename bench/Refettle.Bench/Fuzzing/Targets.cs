using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Sheets;
using Refettle.Sheets.Edits;
using Refettle.Storage;

namespace Refettle.Bench.Fuzzing;

/// <summary>Everything that reads from outside, with sound inputs to begin with.</summary>
internal sealed class Targets : IDisposable
{
    private const int LongestSeed = 4_000;
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("refettle-fuzz-");
    private readonly KitShelf _shelf;
    private readonly string[] _kits;
    private readonly ValueList<Entry> _entries;
    private readonly byte[] _backup;

    /// <param name="content">The folder that holds kits, ladders and samples.</param>
    public Targets(string content)
    {
        _shelf = KitShelf.Load(Path.Combine(content, "kits")).Value;
        _kits = Texts(Path.Combine(content, "kits"), "*.yaml");
        using var store =
            LogbookStore.Open(Path.Combine(_folder.FullName, "store"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        _entries = store.Write("heron", Log()).Value;
        var backup = Path.Combine(_folder.FullName, "backup");
        Backup.Make(store, backup);
        _backup = File.ReadAllBytes(backup);
        var sheet = SheetWriter.Write(new() { Name = "Heron", Structure = _shelf.Start });
        All =
        [
            Target.Texts("sheets", 1_900, [sheet], text => SheetReader.Read(text, "x")),
            Target.Texts("sheets as bytes", 300, [sheet], text => SheetReader.Read(Encoding.Latin1.GetBytes(text), "x")),
            Target.Texts("kits", 1_000, _kits, text => KitReader.Read(text, "x", _shelf.Start)),
            Target.Texts("ladders", 800, Texts(Path.Combine(content, "ladders"), "*.yaml"), text => LadderReader.Read(text, "x")),
            Target.Texts("tables", 800, ["id,name,zone,mass,count\nlid,Lid,boot,2 kg,1\n\"lamp, left\",Lamp,rear,0.4,2\n"],
                text => SpreadsheetReader.Read(text, "parts", text, "joints", _shelf.Start)),
            Target.Texts("edits", 700,
                ["name=Rear clip", "mass=2kg", "out=off(lid)", "ways.unclip.open=3 min", "kind=bolt thread=M10x1.25 grade=8.8 torque=48Nm"],
                Edit),
            Target.Texts("logs", 700, [Lines()], text => LogLines.Read(new StringReader(text))),
            Target.Texts("entries", 800, [.. _entries.Select(entry => JsonSerializer.Serialize(new[] { entry }, ExchangeJson.Options))],
                TakeEntries),
            Target.Texts("questions", 400,
                [JsonSerializer.Serialize(Question.For(Fact.Free("lid"), Fact.Reach("boot")), ExchangeJson.Options)], Ask),
            .. CaptureTargets.All(content, _shelf.Start),
            .. ListTargets.All,
            .. SealTargets.All(_entries),
        ];
        Routes = new(_shelf.Start, _entries);
    }

    public IReadOnlyList<Target> All { get; }

    /// <summary>A server of its own, for what is sent over the network.</summary>
    public RouteTargets Routes { get; }

    /// <summary>A changed backup is restored or refused; whatever comes of it lies in a folder that is thrown away.</summary>
    public Trial RestoreChanged(Mutator mutator)
    {
        var changed = mutator.Change(_backup);
        return new(changed, () => Restore(changed));
    }

    private void Restore(byte[] changed)
    {
        var (from, to) = (Path.Combine(_folder.FullName, "changed"), Path.Combine(_folder.FullName, "restored"));
        File.WriteAllBytes(from, changed);
        if (Backup.Restore(from, to, RandomNumberGenerator.Create()).IsGood)
            Reopen(to);
        foreach (var file in _folder.EnumerateFiles("restored*"))
            file.Delete();
    }

    public void Dispose()
    {
        Routes.Dispose();
        _folder.Delete(recursive: true);
    }

    private static void Reopen(string path)
    {
        var opened = LogbookStore.Open(path, TimeProvider.System, RandomNumberGenerator.Create());
        if (!opened.IsGood)
            return;
        using var store = opened.Value;
        try
        {
            foreach (var car in store.Cars())
                CarHistory.Of(car.Id, store.Read(car.Id).Select(kept => kept.Entry));
        }
        catch (LogbookException)
        {
            // A damaged page is told as one; that is the answer.
        }
    }

    private void Edit(string text)
    {
        if (KeyValue.Read(text.Split(' ')) is not { IsGood: true } values)
            return;
        foreach (var kind in new[] { "part", "joint", "state", "space", "zone", "way" })
            HandEdit.Of(_shelf.Start, kind, "lid", values.Value, isNew: true);
        SettingsEdit.Of(Settings.Standard, values.Value);
    }

    private static void TakeEntries(string text)
    {
        if (Parsed<ValueList<Entry>>(text) is not { } entries || entries.SelectMany(EntryCheck.Of).Any())
            return;
        var history = CarHistory.Of("heron", entries);
        ChainCheck.Of(entries);
        foreach (var entry in entries)
        {
            if (Happenings.Decode(entry) is { IsGood: true, Value: { } happening })
                HappeningCheck.Of(history, happening);
        }
    }

    private void Ask(string text)
    {
        if (Parsed<Question>(text) is { } question)
            QuestionCheck.Of(new Car { Id = "heron", Name = "Heron", Structure = _shelf.Start }, question);
    }

    /// <summary>As the server reads bodies.</summary>
    private static T? Parsed<T>(string text)
        where T : class
    {
        try
        {
            return JsonSerializer.Deserialize<T>(text, ExchangeJson.Options);
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private IEnumerable<Happening> Log() =>
    [
        new CarOpened("Heron", 1988, "EUR"), new StructureAdded("kit start", _shelf.Start, []), new Noted("All well", null),
        new HeightMeasured("rl", new(382)),
        new SoundnessJudged("body", false), new SettingsChosen(Settings.Standard), new StepDone(Fact.State("battery-off"), null, new(4)),
        new Tried(new("clip", "ease", JointCondition.Freed, true, new(3))),
    ];

    private string Lines()
    {
        using var text = new StringWriter();
        LogLines.Write(_entries.Take(3), text);
        return text.ToString();
    }

    private static string[] Texts(string folder, string pattern) =>
        [.. Directory.EnumerateFiles(folder, pattern).Order(StringComparer.Ordinal).Select(File.ReadAllText)
            .Where(text => text.Length <= LongestSeed)];
}
