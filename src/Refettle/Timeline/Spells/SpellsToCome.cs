using NodaTime;

namespace Refettle.Timeline.Spells;

/// <summary>Spells as far as they are entered, and beyond: whoever has entered six weeks is taken to go on in the same rhythm, and the
/// timeline says so where it counts on that.</summary>
public static class SpellsToCome
{
    /// <summary>The last day on which an entered spell begins; null without any, or where one has no end.</summary>
    private static LocalDate? LastEntered(IEnumerable<Spell> spells, LocalDate horizon)
    {
        var all = spells.ToList();
        if (all.Any(spell => spell.Repeats is { Until: null, Count: null }))
            return null;
        var lasts = all.Select(spell => SpellDays.Of(spell, horizon).Select(day => (LocalDate?)day).LastOrDefault()).OfType<LocalDate>()
            .ToList();
        return lasts.Count == 0 ? null : lasts.Max();
    }

    /// <summary>The spells as entered and from the day after the last of them on, until a day; with that last day, null
    /// without any, or where one has no end.</summary>
    public static (ValueList<Spell> Spells, LocalDate? LastEntered) Until(IEnumerable<Spell> spells, LocalDate horizon)
    {
        var all = spells.ToValueList();
        return LastEntered(all, horizon) is { } last ? ([.. all, .. Beyond(all, last)], last) : (all, null);
    }

    /// <summary>The same spells without an end, from the day after the last that is entered. A single spell is taken for one each week,
    /// unless something recurs: then it was an exception.</summary>
    private static IEnumerable<Spell> Beyond(IEnumerable<Spell> spells, LocalDate lastEntered)
    {
        var all = spells.ToList();
        var recurring = all.Where(spell => spell.Repeats is not null).ToList();
        return (recurring.Count > 0 ? recurring : all).Select(spell => Endless(spell, lastEntered));
    }

    private static Spell Endless(Spell spell, LocalDate lastEntered)
    {
        var again = (spell.Repeats ?? new(Rhythm.Weekly, 1, [spell.First.DayOfWeek])) with { Until = null, Count = null };
        var past = SpellDays.Of(spell with { Repeats = again, Except = [] }, lastEntered);
        return spell with { Repeats = again, Except = spell.Except.Concat(past).Distinct().ToValueList() };
    }
}
