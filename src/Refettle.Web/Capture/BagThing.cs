using Refettle.Web.Words;

namespace Refettle.Web.Capture;

/// <summary>Something that a bag belongs to, as its page shows it.</summary>
/// <param name="thing"><c>joint x</c>, <c>part x</c> …</param>
public sealed class BagThing(string thing, CarLookup car)
{
    private readonly string _id = thing[(thing.IndexOf(' ') + 1)..];

    public string Name => CaptureWords.Thing(thing, car);

    /// <summary>What matters when it goes back: torque, new fasteners, ride height.</summary>
    public string Says => Joint is not { } joint ? "" : string.Join(", ", Notes(joint));

    /// <summary>Where to read more, under the car's address: the part, or a joint's first part that comes off.</summary>
    public string Page =>
        Joint is { } joint ? $"part/{joint.Holds.FirstOrDefault(part => car.Part(part)?.Fixed == false) ?? joint.Holds[0]}"
        : car.Part(_id) is not null ? $"part/{_id}" : "parts";

    private Joint? Joint => thing.StartsWith("joint ", StringComparison.Ordinal) ? car.Joint(_id) : null;

    private static IEnumerable<string> Notes(Joint joint)
    {
        if (joint.Count > 1)
            yield return $"{joint.Count} of them";
        if (joint.Thread is { } thread)
            yield return thread;
        if (joint.Torque is { } torque)
            yield return $"{torque} ({Plain.Word(joint.Origin)})";
        if (joint.AtRideHeight)
            yield return "torque at ride height";
        if (joint.SingleUse)
            yield return "new fasteners";
    }
}
