using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline;

/// <summary>The resources of a project, each made when a task first needs it.</summary>
internal sealed class ResourceBook
{
    private const int Plenty = 1000;

    private readonly CarCalendar _calendar;
    private readonly WallClock _clock;
    private readonly LocalDate _horizon;
    private readonly List<Resource> _all = [];
    private readonly Dictionary<string, int> _place = [];
    private readonly List<Fault> _notes = [];

    public ResourceBook(CarCalendar calendar, WallClock clock, LocalDate horizon, IEnumerable<Spell> own)
    {
        (_calendar, _clock, _horizon) = (calendar, clock, horizon);
        Place("you", () => new("you", 1, SpellWindows.Of(own, clock, horizon)));
        if (calendar.TimeZone is null)
            _notes.Add(Note("time zone", "nobody has said where the clock on the wall hangs: times are UTC",
                "Say it: refettle spell zone Europe/Berlin."));
    }

    public ValueList<Resource> All => _all.ToValueList();

    public ValueList<Fault> Notes => _notes.ToValueList();

    /// <summary>The places of the resources that a task needs; none for a wait.</summary>
    public HashSet<int> Of(WorkTask task)
    {
        HashSet<int> uses = task.Mark is { Progress: TaskProgress.Done } || task.IsWait ? [] : [Projection.You];
        foreach (var need in task.IsWait ? [] : task.Uses)
            Use(uses, need);
        foreach (var tool in _calendar.Facilities
            .Where(one => one.Kind == FacilityKind.Tool
                && task.Steps.Any(step => step.Tool.Contains(one.Name, StringComparison.OrdinalIgnoreCase))))
            uses.Add(OfFacilities(Needed.Facility(tool.Id), [tool]));
        var lifts = _calendar.Facilities.Where(one => one.Kind == FacilityKind.Lift).ToList();
        if (lifts.Count > 0 && !task.IsWait && task.Stance is not null and not Car.OnWheels)
            uses.Add(Place(Needed.Lift, () => new(Needed.Lift, Plenty, Windows(lifts))));
        if (task.Air is { } air)
            uses.Add(OfAir(air));
        if (task.Not.Count > 0)
            uses.Add(Place($"not {task.Id}", () => new($"not {task.Id}", 1, Without(task.Not))));
        return uses;
    }

    /// <summary>When so many minutes of the owner's time have passed from now on.</summary>
    public int EndOfWork(int minutes) => WorkTime.Of(new(ValueList<Activity>.Empty, All, []), [Projection.You])?.End(minutes) ?? minutes;

    private void Use(HashSet<int> uses, string need)
    {
        var kind = need switch
        {
            Needed.Helper => FacilityKind.Helper,
            Needed.Bench => FacilityKind.Bench,
            Needed.SprayCorner => FacilityKind.SprayCorner,
            Needed.Dollies => FacilityKind.Dollies,
            _ => (FacilityKind?)null,
        };
        var found = kind is null
            ? _calendar.Facilities.Where(one => need == Needed.Facility(one.Id)).ToList()
            : _calendar.Facilities.Where(one => one.Kind == kind).ToList();
        if (need == Needed.Lift || (kind is null && found.Count == 0))
            return;
        if (kind == FacilityKind.Helper && found.Count == 0)
            _notes.Add(Note("second pair of hands",
                "some tasks need one and there is none in your calendar: taken to be there whenever you are",
                "Add one: refettle facility add neighbour --kind helper, then his spells with --whose neighbour."));
        uses.Add(found.Count == 0 ? Place(need, () => new(need, 1)) : OfFacilities(need, found));
    }

    private int OfFacilities(string name, List<Facility> facilities) =>
        Place(name, () => new(name, facilities.Sum(one => one.Count), Windows(facilities)));

    /// <summary>When any of them is there; null for always.</summary>
    private ValueList<Window>? Windows(List<Facility> facilities)
    {
        if (facilities.Any(one => one.From is null && one.Until is null && _calendar.Spells.All(spell => spell.Whose != one.Id)))
            return null;
        return Stretches.Joined(facilities.SelectMany(one =>
        {
            var days = SpellWindows.Days(one.From, one.Until, _clock, _horizon);
            var spells = _calendar.Spells.Where(spell => spell.Whose == one.Id).ToList();
            return spells.Count == 0 ? days : Stretches.Both(days, SpellWindows.Of(spells, _clock, _horizon));
        }), 0, int.MaxValue);
    }

    /// <summary>What a resource is, in a sentence; most are called by what they are.</summary>
    public static string Words(string id) => id.StartsWith("air ", StringComparison.Ordinal) ? $"air of {id["air ".Length..]}"
        : id.StartsWith("not ", StringComparison.Ordinal) ? "days that are not ruled out" : id;

    private int OfAir(AirNeeds air)
    {
        var name = $"air {air.Says}";
        if (_calendar.Climate.Count == 0 && !_place.ContainsKey(name))
            _notes.Add(Note("climate", "nothing is known of the air where paint dries: no day is ruled out",
                "Say it by month, refettle climate jan=12C/70%, or read it on the day, refettle climate today=14C/62%."));
        return Place(name, () => new(name, Plenty, CoatingDays.Open(_calendar, _clock, _horizon, air)));
    }

    private ValueList<Window> Without(ValueList<DayRange> days) => Stretches.Without(
        Stretches.Joined(days.Select(range => new Window(_clock.Minute(range.First.AtMidnight()), SpellWindows.End(range.Last, _clock))), 0,
            int.MaxValue),
        SpellWindows.End(_horizon, _clock));

    private int Place(string name, Func<Resource> make)
    {
        if (_place.TryGetValue(name, out var place))
            return place;
        _all.Add(make());
        return _place[name] = _all.Count - 1;
    }

    private static Fault Note(string place, string found, string mend) => new(place, found, mend) { Severity = Severity.Note };
}
