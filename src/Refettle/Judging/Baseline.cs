using Refettle.Logbook;

namespace Refettle.Judging;

/// <summary>What is asked before the first bolt, and what of it is known.</summary>
public static class Baseline
{
    private const int LeastPhotos = 8;

    /// <param name="car">The car.</param>
    /// <param name="heights">Corners whose ride height is recorded.</param>
    public static ValueList<BaselineLine> Of(Car car, IReadOnlyCollection<string> heights) =>
        BaselineItems.All.Select(item => Line(car, item, heights)).ToValueList();

    /// <summary>Corners whose ride height is recorded.</summary>
    public static ValueList<string> MeasuredCorners(CarHistory history) => history.Lines.Where(line => line.Standing == Standing.InForce)
        .Select(line => line.Happening).OfType<HeightMeasured>().Select(measured => measured.Corner).Distinct().ToValueList();

    /// <summary>What is still open before the strip begins; none once it has begun and the answers can no longer be had.</summary>
    public static ValueList<BaselineLine> Open(Car car, IReadOnlyCollection<string> heights) =>
        Of(car, heights).Where(line => !line.IsSettled).ToValueList();

    private static BaselineLine Line(Car car, BaselineItem item, IReadOnlyCollection<string> heights)
    {
        var told = car.Baseline.FirstOrDefault(answer => answer.Item == item.Id);
        if (told is not null)
            return new(item, true, told.Says ?? $"left out: {told.WhyNot}");
        return item.Id switch
        {
            BaselineItems.Heights =>
                new(item, heights.Distinct().Count() >= 4,
                    heights.Count == 0 ? null : $"recorded: {string.Join(", ", heights.Distinct().Order(StringComparer.Ordinal))}"),
            BaselineItems.Photos => Photos(car, item),
            BaselineItems.Alignment => new(item, car.IsAlignmentFound, car.IsAlignmentFound ? "recorded" : null),
            _ => new(item, false, null),
        };
    }

    private static BaselineLine Photos(Car car, BaselineItem item)
    {
        var sharp = car.Photos.Count(photo => photo.Sharpness >= Imaging.Sharpness.Blurred);
        return new(item, sharp >= LeastPhotos,
            car.Photos.Count == 0 ? null : $"{car.Photos.Count} taken, {sharp} of them sharp; {LeastPhotos} or more are wanted");
    }
}
