using Refettle.Kits;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets;

/// <summary>The kits of a folder, one <c>.yaml</c> file each with the kit's name, and what every new car begins with.</summary>
/// <remarks>A kit is read and tried when it is asked for.</remarks>
public sealed class KitShelf
{
    private const string StartName = "start";

    private readonly string _folder;
    private readonly Dictionary<string, Result<Kit>> _read = [];

    private KitShelf(string folder, Structure start)
    {
        (_folder, Start) = (folder, start);
        Names = Directory.EnumerateFiles(folder, "*.yaml").Select(file => Path.GetFileNameWithoutExtension(file))
            .Where(name => name != StartName).Order(StringComparer.Ordinal).ToValueList();
    }

    /// <summary>The body shell and the standard zones, states and stances of a new car.</summary>
    public Structure Start { get; }

    /// <summary>The names of all kits, in order.</summary>
    public ValueList<string> Names { get; }

    /// <summary>All kits without errors, by name.</summary>
    public ValueList<Kit> Kits => Names.Select(Read).Where(kit => kit.IsGood).Select(kit => kit.Value).ToValueList();

    /// <summary>Every fault in any of the kits, with file, line and column.</summary>
    public ValueList<Fault> Faults => Names.SelectMany(name => Read(name).Faults).ToValueList();

    /// <summary>The kit of that name; or its faults; or, when there is none, a fault that suggests names.</summary>
    public Result<Kit> Find(string name) => Names.Contains(name)
        ? Read(name)
        : Result<Kit>.Bad(
            new Fault("kit", $"there is no kit \"{name}\"", NearNames.Ask(name, Names, $"Known are {string.Join(", ", Names)}.")));

    /// <summary>Opens a folder of kits; a start that cannot be read keeps it closed.</summary>
    public static Result<KitShelf> Load(string folder)
    {
        var file = Path.Combine(folder, StartName + ".yaml");
        if (!File.Exists(file))
            return Result<KitShelf>.Bad(
                new Fault("kits", $"there is no {StartName}.yaml in {folder}", "Give the folder that holds the kits."));
        var start = Read(file, Structure.Empty);
        return start.IsGood
            ? Result<KitShelf>.Good(new(folder, KitAddition.Propose(Structure.Empty, start.Value).Value.Entry.Added), start.Faults)
            : Result<KitShelf>.Bad(start.Faults);
    }

    private Result<Kit> Read(string name)
    {
        lock (_read)
        {
            if (!_read.TryGetValue(name, out var kit))
                _read.Add(name, kit = Named(name, Read(Path.Combine(_folder, name + ".yaml"), Start)));
            return kit;
        }
    }

    private Result<Kit> Named(string name, Result<Kit> kit) => !kit.IsGood || kit.Value.Id == name ? kit : Result<Kit>.Bad(
        new Fault("kit", $"it calls itself \"{kit.Value.Id}\", its file {name}.yaml", "Give both the same name.")
        { File = Path.Combine(_folder, name + ".yaml"), Line = 1, Column = 1 });

    private static Result<Kit> Read(string file, Structure start)
    {
        try
        {
            var text = FileText.Decode(File.ReadAllBytes(file), file);
            return text.IsGood ? KitReader.Read(text.Value, file, start) : Result<Kit>.Bad(text.Faults);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return Result<Kit>.Bad(new Fault("file", $"{file} cannot be read: {fault.Message.TrimEnd('.')}", "Look at its permissions."));
        }
    }
}
