using NodaTime;

namespace Refettle.Logbook;

/// <summary>The calendar and the owner's terms while a log is folded.</summary>
internal sealed class CalendarBuilder
{
    private readonly Dictionary<string, Spell> _spells = [];
    private readonly Dictionary<string, Facility> _facilities = [];
    private readonly Dictionary<int, ClimateMonth> _months = [];
    private readonly Dictionary<LocalDate, ClimateReading> _readings = [];
    private readonly TaskBook _tasks = new();
    private CarCalendar _rest = CarCalendar.Empty;

    /// <returns>Why it does not fit; null when it does, or tells of something else.</returns>
    public string? Apply(Happening happening) => happening switch
    {
        SpellAdded added => Put(_spells, added.Spell.Id, added.Spell),
        SpellRemoved removed => _spells.Remove(removed.Spell) ? null : $"there is no spell {removed.Spell}",
        SpellMissed missed => Miss(missed),
        TimeZoneChosen chosen => Change(_rest with { TimeZone = chosen.Zone }),
        MeansSet { Means.By: { } day } when _rest.Handover is { } handover =>
            Change(_rest with { Handover = handover with { By = LocalDate.FromDateOnly(day) + handover.By.TimeOfDay } }),
        HandoverSet set => Change(_rest with { Handover = set.Handover }),
        FacilityAdded added => Put(_facilities, added.Facility.Id, added.Facility),
        FacilityRemoved removed => Remove(removed.Facility),
        ClimateExpected expected => Expect(expected.Months),
        ClimateRead read => Put(_readings, read.Reading.Day, read.Reading),
        _ => _tasks.Apply(happening),
    };

    public CarCalendar Build() => _tasks.AddTo(_rest with
    {
        Spells = InOrder(_spells),
        Facilities = InOrder(_facilities),
        Climate = _months.OrderBy(month => month.Key).Select(month => month.Value).ToValueList(),
        Readings = _readings.OrderBy(reading => reading.Key).Select(reading => reading.Value).ToValueList(),
    });

    private string? Expect(ValueList<ClimateMonth> months)
    {
        foreach (var month in months)
            _months[month.Month] = month;
        return null;
    }

    internal static ValueList<T> InOrder<T>(Dictionary<string, T> things) =>
        things.OrderBy(thing => thing.Key, StringComparer.Ordinal).Select(thing => thing.Value).ToValueList();

    internal static string? Put<TKey, T>(Dictionary<TKey, T> things, TKey key, T thing)
        where TKey : notnull
    {
        things[key] = thing;
        return null;
    }

    private string? Miss(SpellMissed missed)
    {
        if (!_spells.TryGetValue(missed.Spell, out var spell))
            return $"there is no spell {missed.Spell}";
        return Put(_spells, spell.Id, spell with { Except = spell.Except.Append(missed.Day).Distinct().Order().ToValueList() });
    }

    private string? Remove(string facility)
    {
        if (!_facilities.Remove(facility))
            return $"there is no facility {facility}";
        foreach (var spell in _spells.Values.Where(spell => spell.Whose == facility).ToList())
            _spells.Remove(spell.Id);
        return null;
    }

    private string? Change(CarCalendar calendar)
    {
        _rest = calendar;
        return null;
    }
}
