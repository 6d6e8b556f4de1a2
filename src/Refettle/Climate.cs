using NodaTime;

namespace Refettle;

/// <summary>The air where paint dries, in one month of the year, as the owner expects it.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="Celsius">While somebody is there and the heater runs, if there is one.</param>
/// <param name="HumidityPercent">Relative humidity.</param>
public sealed record ClimateMonth(int Month, decimal Celsius, decimal HumidityPercent, Origin Origin);

/// <summary>What was read off the instruments on a day. It stands in for the month's figures on that day.</summary>
public sealed record ClimateReading(LocalDate Day, decimal Celsius, decimal HumidityPercent);
