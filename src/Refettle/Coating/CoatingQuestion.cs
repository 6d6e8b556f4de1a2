using NodaTime;

namespace Refettle.Coating;

/// <summary>What is to be coated, from when on.</summary>
/// <param name="From">The plan begins here, by the clock on the wall.</param>
/// <param name="Days">It looks so many days ahead, 1 to 120.</param>
public sealed record CoatingQuestion(Car Car, LocalDateTime From, int Days = 60)
{
    public const int MostDays = 120;

    /// <summary>All faults of the question.</summary>
    public IEnumerable<Fault> Check() => Days is < 1 or > MostDays ? [new("days", $"{Days} days ahead", $"Give 1 to {MostDays}.")] : [];
}
