using Refettle.Logbook;
using Refettle.Timeline.Network;

namespace Refettle.CloseUp;

/// <summary>Where a joint stands that wants its final torque at ride height.</summary>
public enum RideHeightStanding
{
    Open,

    /// <summary>Closed again, and nobody said how tight.</summary>
    Unknown,

    Snug,

    /// <summary>Torqued while the wheels hung: its rubber is wound up. Loosen it and torque it again at ride height.</summary>
    TorquedHanging,

    Settled,
}

/// <summary>One joint of the ledger.</summary>
public sealed record RideHeightLine(Joint Joint, RideHeightStanding Standing)
{
    /// <summary>It is closed, and its torque at ride height is still to come or not known of.</summary>
    public bool IsToSettle => Standing is not (RideHeightStanding.Settled or RideHeightStanding.Open);
}

/// <summary>Which joints are only snugged now, or nobody knows how tight, and wait for their torque: those with bonded
/// rubber for that at ride height.</summary>
public static class RideHeightLedger
{
    /// <summary>Corners whose height is wanted, hub centre to wheel arch.</summary>
    public static ValueList<string> Corners { get; } = ["fl", "fr", "rl", "rr"];

    /// <summary>The joints that were opened or tightened and want ride height, and all others that are snug only or carry the car and were
    /// closed without a word on how tight, in the order of the car's description. A joint may be
    /// tightened that the log never had open.</summary>
    /// <param name="opened">Joints opened since the strip began; those open now are taken along.</param>
    /// <param name="tightenings">In their order. Only those after a joint's last opening.</param>
    public static ValueList<RideHeightLine> Of(Car car, IEnumerable<string> opened, IEnumerable<Tightening> tightenings)
    {
        var last = new Dictionary<string, Tightening>();
        foreach (var tightening in tightenings)
            last[tightening.Joint] = tightening;
        return ClosingRecord.Disturbed(car, opened.Concat(last.Keys))
            .Where(joint => joint.AtRideHeight || (!IsOpen(car, joint) && IsLoose(car, joint, last.GetValueOrDefault(joint.Id))))
            .Select(joint => new RideHeightLine(joint,
                IsOpen(car, joint) ? RideHeightStanding.Open : Standing(last.GetValueOrDefault(joint.Id))))
            .ToValueList();
    }

    /// <summary>The corners to measure before a joint is opened: none unless it wants ride height and a height is missing.</summary>
    /// <param name="recorded">Corners whose height is recorded.</param>
    public static ValueList<string> AskBefore(Car car, Fact next, IEnumerable<string> recorded) =>
        next.Kind == FactKind.Open && car.Structure.Joints.Any(joint => joint.Id == next.Subject && joint.AtRideHeight)
            ? Corners.Except(recorded).ToValueList()
            : [];

    /// <summary>Said to be snug only; or nothing was said, and the car rolls on what it holds.</summary>
    private static bool IsLoose(Car car, Joint joint, Tightening? told) => told?.How == Tightness.Snug
        || (told is null && joint.Thread is not null
            && joint.Holds.Any(name => car.Structure.Parts.Any(part => part.Id == name && Rolling.Carries(part))));

    private static bool IsOpen(Car car, Joint joint) => car.Done.Contains(Fact.Open(joint.Id));

    private static RideHeightStanding Standing(Tightening? tightening) => tightening switch
    {
        null => RideHeightStanding.Unknown,
        { How: Tightness.Snug } => RideHeightStanding.Snug,
        _ when tightening.How.IsSettled(tightening.Stance) => RideHeightStanding.Settled,
        _ => RideHeightStanding.TorquedHanging,
    };
}
