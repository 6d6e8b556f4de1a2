using Refettle.Logbook;

namespace Refettle.QuickLine;

/// <summary>Looks an answer over without the reader: everything it offers must be something that can be kept.</summary>
public static class LineCheck
{
    /// <summary>What is wrong with the answer itself; what only this car's log refuses (a step that is done) is no fault of it.</summary>
    public static ValueList<Fault> Of(CarHistory history, LineAnswer answer)
    {
        var faults = new List<Fault>();
        if (answer.Readings.Count == 0)
            return [Wrong("it offers nothing")];
        if (answer.Readings.All(reading => reading.Kind != LineKind.Note))
            faults.Add(Wrong("it does not offer to keep the line as a note"));
        if (answer.Readings.DistinctBy(reading => (reading.Kind, reading.About, reading.Becomes)).Count() < answer.Readings.Count)
            faults.Add(Wrong("it offers one thing twice"));
        var known = Things(history.Car).ToHashSet();
        foreach (var reading in answer.Readings)
        {
            if (reading.About is { } about && !known.Contains(about) && !about.StartsWith("bag ", StringComparison.Ordinal))
                faults.Add(Wrong($"it speaks of {about}, which the car does not have"));
            if (reading.Fit is not (>= 0 and <= 1))
                faults.Add(Wrong($"a fit of {reading.Fit}"));
            if (Telling.Of(history.Car, answer, reading).Count == 0)
                faults.Add(Wrong($"nothing would be kept of reading {reading.Kind}"));
        }

        return faults.ToValueList();
    }

    private static IEnumerable<string> Things(Car car) => car.Structure.Parts.Select(part => $"part {part.Id}")
        .Concat(car.Structure.Joints.Select(joint => $"joint {joint.Id}"))
        .Concat(Enum.GetValues<Spot>().Where(Spots.IsCorner).Select(spot => $"corner {spot.Code()}"));

    private static Fault Wrong(string what) => new("quick line", what, "This is a mistake in the program.");
}
