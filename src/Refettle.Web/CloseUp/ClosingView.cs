using Refettle.CloseUp;
using Refettle.CloseUp.Refit;
using Refettle.Logbook;

namespace Refettle.Web.CloseUp;

/// <summary>All that the close-up page shows of a car: the sheet, and what stands before the road.</summary>
/// <param name="Of">The log that it was worked out from.</param>
public sealed record ClosingView(CarHistory Of, RefitSheet Sheet, ValueList<Joint> ToTorque, ValueList<TorqueConflict> Undecided)
{
    /// <summary>Worked out anew only when the log has grown: a sheet of a car in pieces takes a while in a browser.</summary>
    public static ClosingView From(CarHistory history, ClosingView? known)
    {
        if (known is not null && ReferenceEquals(known.Of, history))
            return known;
        var record = ClosingRecord.Of(history);
        var ledger = RideHeightLedger.Of(history.Car, record.Opened, record.Tightenings);
        return new(history, RefitPlanner.Of(history), ledger.Where(line => line.IsToSettle).Select(line => line.Joint).ToValueList(), TorqueConflicts.Of(history));
    }
}
