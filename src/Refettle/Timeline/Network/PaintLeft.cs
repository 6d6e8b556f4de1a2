namespace Refettle.Timeline.Network;

/// <summary>What is left of coats that are on already: remains of paint that stand there until they are handed in.</summary>
internal static class PaintLeft
{
    /// <summary>Names of the products that were put on since waste was handed in last, each once.</summary>
    public static IEnumerable<string> Of(Car car)
    {
        var handedIn = car.Calendar.Marks.FirstOrDefault(mark => mark is { Task: Disturbed.HandIn, Progress: TaskProgress.Done })?.At;
        return car.Coating.Applied.Where(coat => handedIn is not { } then || coat.At > then)
            .Select(coat => car.Coating.Product(coat.Product)?.Name ?? coat.Product).Distinct();
    }
}
