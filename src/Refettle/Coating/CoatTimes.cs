using NodaTime;

namespace Refettle.Coating;

/// <summary>What cannot be true of the times of coats.</summary>
public static class CoatTimes
{
    /// <summary>Coats of a time that is still to come, and parts whose coats bear times in another
    /// order than they can have gone on.</summary>
    public static ValueList<Fault> Doubts(CarCoating coating, LocalDateTime now) =>
    [
        .. coating.Applied.Where(coat => coat.At > now.PlusMinutes((long)ClocksApart.Borne.TotalMinutes))
            .Select(coat => new Fault($"coat {coat.Product}",
            $"its time, {DayWords.Moment(coat.At)}, is still to come: what is due on {string.Join(", ", coat.Parts)} is counted from then",
            "Set the clock, strike the entry, and say it again with --on and --at.") { Severity = Severity.Note }),
        .. PartProgress.All(coating).Where(part => part.IsAsEntered).Select(part => new Fault($"part {part.Part}",
            "the times of its coats are in another order than they can have gone on; the order in which they were entered counts",
            "A clock was off. Strike what bears the wrong time, and say it again with --on and --at.") { Severity = Severity.Note }),
    ];
}
