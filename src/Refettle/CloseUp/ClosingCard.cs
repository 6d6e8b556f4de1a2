namespace Refettle.CloseUp;

/// <summary>How one joint is closed: order, stages, torque, what is needed new, what has to be asked first.</summary>
/// <param name="Advice">What to do with the joint's figure; null when it has none.</param>
/// <param name="General">A general range where there is no figure; null when there is one, or thread and grade are not known.</param>
/// <param name="Order">The places in their order, from 1.</param>
/// <param name="Stages">Empty while the torque is not settled.</param>
/// <param name="NewFasteners">How many are needed new; 0 when they may be used again.</param>
public sealed record ClosingCard(
    Joint Joint, TorqueAdvice? Advice, GeneralTorque? General, ValueList<int> Order, ValueList<TorqueStage> Stages, int NewFasteners,
    ValueList<string> Says)
{
    /// <param name="statedFor">The thread condition that the joint's figure is for.</param>
    /// <param name="fitted">The condition that it will be fitted in.</param>
    /// <param name="rows">Rows that the fasteners stand in; null when they stand on a circle.</param>
    /// <param name="angles">Turns after the torque, in degrees.</param>
    /// <returns>A fault when the fasteners do not fill the rows, or are more than can be ordered.</returns>
    public static Result<ClosingCard> Of(
        Joint joint, ThreadCondition statedFor, ThreadCondition fitted, int? rows, params ValueList<decimal> angles)
    {
        if (joint.Count > TighteningSequence.Most)
            return Bad(joint, $"{joint.Count} fasteners", $"An order is given for up to {TighteningSequence.Most}");
        if (rows is { } asked && (asked < 1 || joint.Count % asked != 0))
            return Bad(joint, $"{joint.Count} fasteners do not stand in {asked} equal rows",
                "Give rows that divide their number, or none for a circle");
        if (angles.Any(angle => angle is <= 0 or > 360))
            return Bad(joint, "an angle outside a turn", "Give more than 0, up to 360°");
        var order = rows is { } number ? TighteningSequence.Spiral(number, joint.Count / number) : TighteningSequence.Star(joint.Count);
        var advice = joint.Torque is { } torque ? LubricantDecision.Of(torque, joint.Origin, statedFor, fitted) : null;
        var general = advice is null && GeneralTorque.Of(joint) is { IsGood: true } range ? range.Value : null;
        return Result<ClosingCard>.Good(new(joint, advice, general, order,
            advice?.Torque is { } settled ? TorqueStages.To(settled, order, angles) : [],
            joint.SingleUse ? joint.Count : 0, Notes(joint, general, angles.Count > 0).ToValueList()));
    }

    private static IEnumerable<string> Notes(Joint joint, GeneralTorque? general, bool byAngle)
    {
        if (joint.AtRideHeight)
            yield return "Bonded rubber: only snug now; torque it at ride height, with the wheels carrying the car.";
        if (joint.SingleUse)
            yield return "Single-use: new fasteners, in hand before the old ones are thrown away.";
        if (byAngle && !joint.SingleUse)
            yield return "A turn by angle may stretch the bolt for good: new ones unless the maker says otherwise.";
        if (general is not null)
            yield return GeneralTorque.Says;
        if (joint.Torque is null && general is null)
            yield return "No figure is known, and no thread and grade to reckon a general range from: look in the maker's manual.";
        if (joint.Torque is not null && joint.Origin != Origin.Maker)
            yield return "The figure is not from the vehicle maker, whose figure comes first.";
    }

    private static Result<ClosingCard> Bad(Joint joint, string found, string mend) =>
        Result<ClosingCard>.Bad(new Fault($"joint {joint.Id}", found, mend));
}
