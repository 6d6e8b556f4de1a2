using Refettle.Kits;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets;

/// <summary>The kits of a folder, and what every new car begins with.</summary>
public sealed class KitShelf
{
    private const string StartFile = "start.yaml";

    private readonly Dictionary<string, Kit> _kits;

    private KitShelf(Structure start, IEnumerable<Kit> kits)
    {
        Start = start;
        Kits = kits.OrderBy(kit => kit.Id, StringComparer.Ordinal).ToValueList();
        _kits = Kits.ToDictionary(kit => kit.Id);
    }

    /// <summary>The body shell and the standard zones, states and stances of a new car.</summary>
    public Structure Start { get; }

    /// <summary>All kits, by name.</summary>
    public ValueList<Kit> Kits { get; }

    /// <summary>The kit of that name, or a fault that names the nearest.</summary>
    public Result<Kit> Find(string name)
    {
        if (_kits.TryGetValue(name, out var kit))
            return Result<Kit>.Good(kit);
        return Result<Kit>.Bad(new Fault("kit", $"there is no kit \"{name}\"",
            NearNames.Ask(name, _kits.Keys, $"Known are {string.Join(", ", Kits.Select(known => known.Id))}.")));
    }

    /// <summary>Reads every <c>.yaml</c> file of a folder. A kit with faults is left out and its faults are among the notes;
    /// only a start that cannot be read keeps the shelf from being made.</summary>
    public static Result<KitShelf> Load(string folder)
    {
        var start = ReadStart(folder);
        if (!start.IsGood)
            return Result<KitShelf>.Bad(start.Faults);
        var faults = new List<Fault>();
        var kits = new Dictionary<string, Kit>();
        foreach (var file in Directory.EnumerateFiles(folder, "*.yaml").Order(StringComparer.Ordinal))
        {
            if (Path.GetFileName(file) == StartFile)
                continue;
            var kit = Read(file, start.Value);
            faults.AddRange(kit.Faults);
            if (kit.IsGood && !kits.TryAdd(kit.Value.Id, kit.Value))
                faults.Add(new("kit", $"there is a kit \"{kit.Value.Id}\" already", "Rename one of them") { File = file, Line = 1, Column = 1 });
        }

        return Result<KitShelf>.Good(new(start.Value, kits.Values), faults);
    }

    private static Result<Structure> ReadStart(string folder)
    {
        var file = Path.Combine(folder, StartFile);
        if (!File.Exists(file))
            return Result<Structure>.Bad(new Fault("kits", $"there is no {StartFile} in {folder}", "Give the folder that holds the kits"));
        var kit = Read(file, Structure.Empty);
        return kit.IsGood
            ? Result<Structure>.Good(KitAddition.Propose(Structure.Empty, kit.Value).Value.Entry.Added, kit.Faults)
            : Result<Structure>.Bad(kit.Faults);
    }

    private static Result<Kit> Read(string file, Structure start)
    {
        try
        {
            var text = FileText.Decode(File.ReadAllBytes(file), file);
            return text.IsGood ? KitReader.Read(text.Value, file, start) : Result<Kit>.Bad(text.Faults);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Result<Kit>.Bad(new Fault("file", $"{file} cannot be read: {fault.Message}", "Look at its permissions"));
        }
    }
}
