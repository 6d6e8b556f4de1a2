using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;

namespace Refettle.Web.CloseUp;

/// <summary>All that the close-up page shows of a car: the sheet, and what stands before the road.</summary>
/// <param name="Logs">The logs that it was worked out from, the car's own first.</param>
/// <param name="Absent">Parts that are not here, by identifier.</param>
public sealed record ClosingView(
    ValueList<CarHistory> Logs, RefitSheet Sheet, ValueList<Joint> ToTorque, ValueList<StepFasteners> Fasteners, ValueList<Awaited> Awaited,
    ValueList<string> Absent)
{
    /// <summary>Worked out anew only when the log has grown: a sheet of a car in pieces takes a while in a browser.</summary>
    /// <param name="logs">Of all cars, since they share the shelf; the car's own first.</param>
    public static ClosingView From(ValueList<CarHistory> logs, DateOnly today, ClosingView? known)
    {
        if (known is not null && known.Logs.SequenceEqual(logs, ReferenceEqualityComparer.Instance))
            return known;
        var history = logs[0];
        var parts = new AwaitedParts(history.Car, logs, today);
        var absent = parts.Absent;
        var isSame = known is not null && ReferenceEquals(known.Logs[0], history);
        var sheet = isSame && known!.Absent == absent ? known.Sheet : RefitPlanner.Of(history, absent);
        var toTorque = isSame ? known!.ToTorque : Settling(history);
        var fasteners = RefitFasteners.Of(history.Car, sheet, logs, today);
        return new(logs, sheet, toTorque, fasteners, parts.Of(sheet, fasteners), absent);
    }

    private static ValueList<Joint> Settling(CarHistory history)
    {
        var record = ClosingRecord.Of(history);
        return RideHeightLedger.Of(history.Car, record.Opened, record.Tightenings).Where(line => line.IsToSettle).Select(line => line.Joint)
            .ToValueList();
    }
}
