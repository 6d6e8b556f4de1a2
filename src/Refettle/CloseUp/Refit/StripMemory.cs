using Refettle.Access.Fire;
using Refettle.Logbook;

namespace Refettle.CloseUp.Refit;

/// <summary>What the log remembers of the strip, by the thing that it is about.</summary>
internal sealed class StripMemory
{
    private readonly Car _car;
    private readonly ILookup<string, (int Place, Remembered Line)> _lines;
    private readonly Dictionary<string, string> _nameOf;
    private readonly HashSet<string> _heated;

    public StripMemory(CarHistory history)
    {
        _car = history.Car;
        _nameOf = _car.Structure.Parts.ToDictionary(part => $"part {part.Id}", part => part.Name);
        _heated = [.. history.Lines.Where(line => line.Standing == Standing.InForce).Select(line => line.Happening).OfType<Happening>()
            .SelectMany(Heated)];
        _lines = history.Lines.Select((line, place) => (line, place))
            .Where(pair => pair.line is { Standing: Standing.InForce, Happening: not null })
            .SelectMany(pair => Told(pair.line.Happening!)
                .Select(told => (told.About, Entry: (pair.place, new Remembered(pair.line.Entry.At, pair.line.Entry.Device, told.Says)))))
            .ToLookup(pair => pair.About, pair => pair.Entry);
    }

    /// <summary>In the order of the log.</summary>
    public ValueList<Remembered> Of(Fact fact) =>
        Abouts(fact).SelectMany(about => _lines[about]).OrderBy(line => line.Place).Select(line => line.Line).Distinct().ToValueList();

    /// <summary>Place in the log of the last line about it; -1 when there is none.</summary>
    public int LastOf(Fact fact) => Abouts(fact).SelectMany(about => _lines[about]).Select(line => line.Place).DefaultIfEmpty(-1).Max();

    public ValueList<Photo> PhotosOf(Fact fact) => _car.Photos.Where(photo => Abouts(fact).Any(photo.Of.Contains)).ToValueList();

    public bool IsPhotographed(string about) => _car.Photos.Any(photo => photo.Of.Contains(about));

    /// <summary>Whether heat or flame was used at a joint, by the ways and tries in the log.</summary>
    public bool IsHeated(Joint joint) => _heated.Contains(joint.Id);

    private IEnumerable<string> Heated(Happening happening) => happening switch
    {
        StepDone { Fact: { Kind: FactKind.Open } fact, Way: { } name } when IsHot(HotWork.OfTool(name) | ToolOf(fact.Subject, name)) =>
            [fact.Subject],
        Tried tried when IsHot(HotWork.OfTool(tried.Try.Rung)) || tried.Try.Rung.StartsWith("weld", StringComparison.Ordinal) =>
            [tried.Try.Joint],
        _ => [],
    };

    private Danger ToolOf(string joint, string way) =>
        _car.Structure.Joints.FirstOrDefault(known => known.Id == joint) is { } found
            && found.Ways.FirstOrDefault(own => own.Id == way) is { } used
        ? HotWork.Of(used, joint: null) : Danger.None;

    private static bool IsHot(Danger danger) => (danger & (Danger.Heat | Danger.Flame)) != 0;

    /// <summary>Bags that are not empty and belong to it.</summary>
    public ValueList<Bag> BagsOf(Fact fact) => _car.Bags.Where(bag => !bag.IsEmpty && Abouts(fact).Any(bag.For.Contains)).ToValueList();

    /// <summary>The thing itself; of a sub-assembly its members too.</summary>
    private IEnumerable<string> Abouts(Fact fact) => fact.Kind switch
    {
        FactKind.Open => [$"joint {fact.Subject}"],
        FactKind.State => [$"state {fact.Subject}"],
        FactKind.Reach => [$"space {fact.Subject}"],
        _ when _car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject) is { } unit =>
            unit.Members.Select(member => $"part {member}").Prepend($"sub-assembly {unit.Id}"),
        _ => [$"part {fact.Subject}"],
    };

    private IEnumerable<(string About, string Says)> Told(Happening happening) => happening switch
    {
        StepDone done =>
            Abouts(done.Fact).Take(1)
                .Select(about => (about,
                    $"{Undone(done.Fact)}{(done.Way is null ? "" : $", {done.Way}")}{(done.Took is null ? "" : $", {done.Took}")}")),
        Tried tried => [($"joint {tried.Try.Joint}", $"tried: {tried.Try.Rung}")],
        Noted { About: { } about } noted => [(about, noted.Text)],
        _ => [],
    };

    private string Undone(Fact fact) => fact.Kind switch
    {
        FactKind.Off => _nameOf.ContainsKey($"part {fact.Subject}") ? "taken off" : "taken off as one",
        FactKind.Free => "taken off and freed",
        FactKind.Open => "undone",
        FactKind.Reach => "opened",
        _ => "done",
    };
}
