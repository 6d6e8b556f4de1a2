namespace Refettle.Cli.Verbs;

/// <summary>How the car stands, in one sentence and as data: the reply of every verb that writes to the log.</summary>
internal static class Stands
{
    public static Reply After(OpenCar now, string sentence) => Reply.Said(sentence, new
    {
        car = now.Car.Id,
        entry = now.Entries[now.Entries.Count - 1].Id,
        says = sentence,
        parts = now.Car.Structure.Parts.Count,
        joints = now.Car.Structure.Joints.Count,
        looseEnds = now.Car.Structure.LooseEnds.Count,
        stance = now.Car.Stance,
        done = now.Car.Done,
    });
}
