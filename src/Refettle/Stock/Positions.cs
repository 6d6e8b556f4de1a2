using Refettle.Logbook;

namespace Refettle.Stock;

/// <summary>Parts and joints of a car as places for pieces.</summary>
public static class Positions
{
    /// <summary>How many pieces a thing has by the car's description; 1 when it is not there.</summary>
    public static int Count(Car car, string text) => !Thing.TryParse(text, out var thing) ? 1 : thing.Kind switch
    {
        ThingKind.Part => car.Structure.Parts.FirstOrDefault(part => part.Id == thing.Id)?.Count ?? 1,
        ThingKind.Joint => car.Structure.Joints.FirstOrDefault(joint => joint.Id == thing.Id)?.Count ?? 1,
        _ => 1,
    };

    /// <summary>The fault of naming what the car does not have, or null.</summary>
    public static Fault? Unknown(Car car, string text)
    {
        var known = car.Structure.Parts.Select(part => $"part {part.Id}").Concat(car.Structure.Joints.Select(joint => $"joint {joint.Id}"))
            .ToHashSet();
        return known.Contains(text)
            ? null
            : new(text, $"{car.Id} has no such part or joint",
                NearNames.Ask(text, known, "Write it as 'part x' or 'joint x'; refettle show parts lists them."));
    }
}
