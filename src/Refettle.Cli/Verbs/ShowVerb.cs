using System.CommandLine;
using System.Text.Json;
using Refettle.Cli.Views;
using Refettle.CloseUp;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

internal static class ShowVerb
{
    public static Command Make(Desk desk)
    {
        var what = new Argument<string[]>("what")
        { Description = "A thing: part ID, joint ID, state ID, space ID, sub-assembly ID; nothing for the whole car; or parts, joints, states, spaces.", Arity = ArgumentArity.ZeroOrMore };
        var source = new CarSource();
        return source.AddTo(new("show", "What the car is made of, or all about one thing.") { what })
            .Answers(desk, parsed => source.With(desk, parsed, (car, open) => Answer(car, open, parsed.GetValue(what) ?? [])));
    }

    private static Reply Answer(Car car, OpenCar? open, string[] what)
    {
        if (what.Length == 0)
            return new(CarView.Of(car), CarForm(car));
        if (what.Length == 1)
            return List(car, what[0]);
        var text = string.Join(' ', what);
        if (!Thing.TryParse(text, out var thing))
            return Reply.Bad([new(text, "this names no thing", "Write part x, joint x, state x, space x, sub-assembly x or zone x.")]);
        if (Unknown.Of(what[0], thing.Id, Ids(car.Structure, thing.Kind)) is { } fault)
            return Reply.Bad([fault]);
        var undecided = thing.Kind == ThingKind.Joint && open is not null
            ? TorqueConflicts.Of(open.History).FirstOrDefault(conflict => conflict.Joint == thing.Id)
            : null;
        return new(ThingView.Of(car, thing, undecided, open?.Logbook.Devices.Names()),
            WithTorques(ThingForm(car.Structure, thing), undecided));
    }

    /// <summary>The thing as in the log; a joint whose torque is undecided with one field more.</summary>
    private static object WithTorques(object thing, TorqueConflict? undecided)
    {
        if (undecided is null)
            return thing;
        var form = JsonSerializer.SerializeToNode(thing, ExchangeJson.Indented)!.AsObject();
        form["undecided"] = JsonSerializer.SerializeToNode(undecided, ExchangeJson.Indented);
        return form;
    }

    private static Reply List(Car car, string kind)
    {
        var found = Enum.GetValues<ThingKind>()
            .Where(candidate => kind.StartsWith(candidate switch
            {
                ThingKind.SubAssembly => "sub-assembl",
                _ => candidate.ToString().ToLowerInvariant()
            }, StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Count == 0
            ? Reply.Bad([new(kind, "this names no kind of thing",
                "Write parts, joints, states, spaces, sub-assemblies or zones, or part ID for one.")])
            : new(CarView.Listed(car, found[0]), new { kind, ids = Ids(car.Structure, found[0]).ToValueList() });
    }

    private static object CarForm(Car car) => new
    {
        id = car.Id,
        name = car.Name,
        year = car.Year,
        currency = car.Currency,
        stance = car.Stance,
        done = car.Done,
        unsound = car.Unsound,
        settings = car.Settings,
        counts = new
        {
            parts = car.Structure.Parts.Count,
            joints = car.Structure.Joints.Count,
            subAssemblies = car.Structure.SubAssemblies.Count,
            states = car.Structure.States.Count,
            spaces = car.Structure.Spaces.Count,
            looseEnds = car.Structure.LooseEnds.Count
        },
        parts = car.Structure.Parts.Select(part => new { part.Id, part.Name, part.Zone, part.Side, part.Scarcity }).ToValueList(),
    };

    private static object ThingForm(Structure structure, Thing thing) => thing.Kind switch
    {
        ThingKind.Part => structure.Parts.First(part => part.Id == thing.Id),
        ThingKind.Joint => structure.Joints.First(joint => joint.Id == thing.Id),
        ThingKind.State => structure.States.First(state => state.Id == thing.Id),
        ThingKind.Space => structure.Spaces.First(space => space.Id == thing.Id),
        ThingKind.SubAssembly => structure.SubAssemblies.First(group => group.Id == thing.Id),
        _ => structure.Zones.First(zone => zone.Id == thing.Id),
    };

    public static IEnumerable<string> Ids(Structure structure, ThingKind kind) => kind switch
    {
        ThingKind.Part => structure.Parts.Select(part => part.Id),
        ThingKind.Joint => structure.Joints.Select(joint => joint.Id),
        ThingKind.State => structure.States.Select(state => state.Id),
        ThingKind.Space => structure.Spaces.Select(space => space.Id),
        ThingKind.SubAssembly => structure.SubAssemblies.Select(group => group.Id),
        _ => structure.Zones.Select(zone => zone.Id),
    };
}
