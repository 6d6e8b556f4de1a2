using System.CommandLine;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Views;
using Refettle.CloseUp;
using Refettle.CloseUp.Refit;

namespace Refettle.Cli.Verbs;

internal static class ReadyVerb
{
    public static Command Make(Desk desk)
    {
        var leftOff = new Option<string[]>("--left-off")
        {
            Description = "A part, sub-assembly, joint or state that stays so on purpose; part x where a joint has the same name.",
            AllowMultipleArgumentsPerToken = true
        };
        return new Command("ready", "What still stands between the car and the road.") { leftOff }
            .Answers(desk,
                parsed => OpenShelf.With(desk, parsed,
                    shelf => Reply.To(LeftOff.Of(shelf.Open.Car.Structure, parsed.GetValue(leftOff) ?? []), stays =>
            {
                var open = shelf.Open;
                var awaited = NotHere(shelf);
                var record = ClosingRecord.Of(open.History);
                var ledger = RideHeightLedger.Of(open.Car, record.Opened, record.Tightenings);
                var undecided = TorqueConflicts.Of(open.History);
                var blocks = RoadReadiness.Of(open.Car, ledger, stays, undecided, awaited);
                return new(ClosingView.Of(blocks), new
                {
                    blocks,
                    awaited,
                    undecided,
                    rideHeight = ledger.Select(line => new { joint = line.Joint.Id, standing = line.Standing }).ToValueList(),
                    heights = record.Heights.Select(height => new { corner = height.Corner, millimetres = height.Height }).ToValueList(),
                    newFasteners = NewFasteners.Of(open.Car, record.Opened)
                        .Select(one => new { joint = one.Joint.Id, thread = one.Joint.Thread, count = one.Count }).ToValueList(),
                });
            })));
    }

    private static ValueList<Awaited> NotHere(OpenShelf shelf)
    {
        var histories = shelf.Cars.Select(one => one.History).ToList();
        var parts = new AwaitedParts(shelf.Open.Car, histories, shelf.Today);
        var sheet = RefitPlanner.Of(shelf.Open.History, parts.Absent);
        return parts.Of(sheet, RefitFasteners.Of(shelf.Open.Car, sheet, histories, shelf.Today));
    }
}
