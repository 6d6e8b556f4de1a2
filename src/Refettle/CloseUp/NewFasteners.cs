namespace Refettle.CloseUp;

/// <summary>Fasteners that are needed new.</summary>
public sealed record NewFastener(Joint Joint, int Count);

/// <summary>The single-use fasteners of joints that were opened.</summary>
public static class NewFasteners
{
    /// <param name="opened">Joints opened since the strip began; those open now are taken along.</param>
    public static ValueList<NewFastener> Of(Car car, IEnumerable<string> opened) =>
        ClosingRecord.Disturbed(car, opened).Where(joint => joint.SingleUse).Select(joint => new NewFastener(joint, joint.Count))
            .ToValueList();
}
