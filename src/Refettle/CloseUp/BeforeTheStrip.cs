using Refettle.Judging;
using Refettle.Logbook;

namespace Refettle.CloseUp;

/// <summary>What is asked before a step, because it cannot be found out after it.</summary>
public static class BeforeTheStrip
{
    /// <summary>Notes: the list of the car as it came, before the first bolt; ride heights, before the first
    /// joint that wants its torque there.</summary>
    public static ValueList<Fault> Asks(CarHistory history, Fact next)
    {
        var heights = Baseline.MeasuredCorners(history);
        var asks = new List<Fault>();
        if (next.Kind != FactKind.State && history.Car.Done.All(fact => fact.Kind == FactKind.State)
            && Baseline.Open(history.Car, heights) is { Count: > 0 } open)
            asks.Add(Note("before the first bolt", $"not told yet: {string.Join(", ", open.Select(line => line.Item.Id))}",
                "It cannot be found out later: refettle baseline."));
        if (RideHeightLedger.AskBefore(history.Car, next, heights) is { Count: > 0 } corners)
            asks.Add(Note(next.ToString(), $"the ride height is not measured: {string.Join(", ", corners)}",
                "Its bonded rubber wants the final torque there: refettle height CORNER, the car on its wheels."));
        return asks.ToValueList();
    }

    private static Fault Note(string place, string found, string mend) => new(place, found, mend) { Severity = Severity.Note };
}
