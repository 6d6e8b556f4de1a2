using NodaTime;
using Refettle.Logbook;

namespace Refettle.Web.Times;

/// <summary>A spell while it is written.</summary>
public sealed class SpellDraft(DateOnly today)
{
    public string Name { get; set; } = "";

    /// <summary>The facility whose it is; empty for the owner's own time.</summary>
    public string Whose { get; set; } = "";

    public HashSet<IsoDayOfWeek> Days { get; } = [];

    public DateOnly First { get; set; } = today;

    public DateOnly? Last { get; set; }

    public TimeOnly From { get; set; } = new(18, 30);

    public TimeOnly Until { get; set; } = new(21, 30);

    /// <summary>Without a day of the week it is once.</summary>
    public Spell Spell => new()
    {
        Id = Identifier.From(Name),
        Whose = Whose.Length == 0 ? null : Whose,
        First = LocalDate.FromDateOnly(First),
        From = LocalTime.FromTimeOnly(From),
        Until = LocalTime.FromTimeOnly(Until),
        Repeats = Days.Count == 0
            ? null
            : new(Rhythm.Weekly, 1, Days.Order().ToValueList(), Last is { } last ? LocalDate.FromDateOnly(last) : null),
    };

    public ValueList<Fault> Faults(CarHistory history) => HappeningCheck.Of(history, new SpellAdded(Spell));
}
