using Refettle.Logbook;

namespace Refettle.CloseUp;

/// <summary>What was put back last, to be taken back.</summary>
public static class LastClosed
{
    /// <summary>The entries to strike: the newest mark of something put back, with how tight it was made;
    /// none when the newest mark of the car is that something came off.</summary>
    public static ValueList<Guid> Of(CarHistory history)
    {
        var marks = history.Lines
            .Where(line => line.Standing == Standing.InForce && line.Happening is StepDone or StepReversed or StanceTaken or JointTightened)
            .ToList();
        return marks switch
        {
            [] or [.., { Happening: StepDone }] => [],
            [.., { Happening: StepReversed back } before, { Happening: JointTightened tightened } last]
                when back.Fact == Fact.Open(tightened.Joint) => [last.Entry.Id, before.Entry.Id],
            [.., var last] => [last.Entry.Id],
        };
    }
}
