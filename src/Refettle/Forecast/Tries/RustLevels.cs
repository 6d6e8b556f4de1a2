using Refettle.Stuck;

namespace Refettle.Forecast.Tries;

/// <summary>The hidden rust of a car as levels that futures share: its grade, and under it one level for each zone.</summary>
internal sealed class RustLevels(SeizureBelief belief)
{
    private const string Grade = "rust of the car";

    private readonly SortedDictionary<string, HiddenLevel> _zones = new(StringComparer.Ordinal);

    /// <summary>The levels that were asked for so far.</summary>
    public ValueList<HiddenLevel> Levels =>
        _zones.Count == 0 ? [] : [new(Grade, null, [belief.CarGrade().ToValueList()]), .. _zones.Values];

    /// <summary>Tries at a joint, told by the level of its zone: the joint's own level strays around that.</summary>
    /// <param name="byJointLevel">Outcomes for each level of the joint.</param>
    public ByLevel Of(string joint, ValueList<ValueList<DurationChance>> byJointLevel)
    {
        var place = belief.PlaceOf(joint);
        var zone = $"rust of {place.Zone}, exposure {place.Exposure}";
        _zones.TryAdd(zone, new(zone, Grade, belief.LevelsAt(place).Select(Normal).ToValueList()));
        return new(zone, belief.LevelsOf(joint).Select(chances => Mixed(chances, byJointLevel)).ToValueList())
        { Origin = Origin.CommonPractice };
    }

    private static ValueList<double> Normal(ValueList<double> weights) => weights.Select(weight => weight / weights.Sum()).ToValueList();

    private static ValueList<DurationChance> Mixed(ValueList<double> chances, ValueList<ValueList<DurationChance>> byLevel) =>
        byLevel.SelectMany((outcomes, level) => outcomes.Select(one => one with { Chance = one.Chance * chances[level] }))
            .GroupBy(one => one.Duration).Select(group => new DurationChance(group.Key, group.Sum(one => one.Chance))).ToValueList();
}
