using Refettle.Timeline;
using Refettle.Timeline.Spells;

namespace Refettle.Forecast.Policy;

/// <summary>A project and its list policy laid out in flat arrays, ready to be simulated. Activities are
/// numbered in the order of the list.</summary>
internal sealed class Course
{
    public Course(Project given, ValueList<int> list)
    {
        var project = given with { Resources = given.Resources.Select(Whole).ToValueList() };
        var order = list.OrderBy(place => project.Activities[place].Done is null).ToValueList();
        Place = [.. order];
        var position = new int[order.Count];
        for (var i = 0; i < order.Count; i++)
            position[order[i]] = i;
        var activities = order.Select(place => project.Activities[place]).ToArray();
        Done = Array.ConvertAll(activities, activity => activity.Done);
        Earliest = Array.ConvertAll(activities, activity => Math.Max(activity.Earliest, activity.FixedStart ?? 0));
        Pace = Array.ConvertAll(activities, activity => activity.Pace);
        Capacity = [.. project.Resources.Select(resource => resource.Capacity)];
        var arcs = project.Lags
            .Select((lag, place) => new Arc(position[lag.Before], lag.Least, lag.Most ?? int.MaxValue, lag.Anchor == Anchor.Start, place))
            .ToLookup(arc => position[project.Lags[arc.Lag].After]);
        Arcs = [.. Enumerable.Range(0, order.Count).Select(i => Done[i] is null ? arcs[i].ToArray() : [])];
        Demands = Array.ConvertAll(activities, activity => activity.Demands
            .Select((units, resource) => new Demand(resource, units)).Where(demand => demand.Units > 0).ToArray());
        Closing = [.. Enumerable.Range(0, Count).SelectMany(i => Arcs[i].Where(arc => arc.Most < int.MaxValue).Select(arc => (i, arc)))];
        (Calendars, CalendarOf, SpellOf) = Calendar(project);
        Keeps = Keeping(project);
    }

    /// <summary>Place in the project of each activity.</summary>
    public int[] Place { get; }

    public int Count => Place.Length;

    /// <summary>Set for what was done already: it takes its resources and is not asked about anything. Comes first.</summary>
    public Window?[] Done { get; }

    /// <summary>A settled start counts as an earliest one: a future may not be able to keep it.</summary>
    public int[] Earliest { get; }

    public Pace[] Pace { get; }

    public int[] Capacity { get; }

    /// <summary>What holds the start of each activity.</summary>
    public Arc[][] Arcs { get; }

    /// <summary>The arcs that have a latest end, with the activity they hold.</summary>
    public (int Activity, Arc Arc)[] Closing { get; }

    public Demand[][] Demands { get; }

    public OpenTimes[] Calendars { get; }

    /// <summary>For each activity the number of its calendar; below 0 when it runs by the wall clock.</summary>
    public int[] CalendarOf { get; }

    /// <summary>All windows of all resources, as (resource, start): what can be missed.</summary>
    public (int Resource, int Start)[] SpellOf { get; }

    /// <summary>For each resource the number of the calendar that is its own windows and nothing else, when only work that keeps to windows
    /// asks for it; below 0 otherwise. It then counts as taken up to its next opening.</summary>
    public int[] Keeps { get; }

    /// <summary>What waits for the finish of an activity, given by its place in the project.</summary>
    public (int Activity, int Least)[] AfterOf(int place)
    {
        var number = Array.IndexOf(Place, place);
        return [.. Enumerable.Range(0, Count)
            .SelectMany(i => Arcs[i].Where(arc => arc.Before == number && !arc.FromStart).Select(arc => (i, arc.Least)))];
    }

    private (OpenTimes[], int[], (int, int)[]) Calendar(Project project)
    {
        var spells = project.Resources.SelectMany((resource, place) => (resource.Open ?? []).Select(window => (place, window.Start)))
            .ToArray();
        var firstSpell = project.Resources.Select((_, place) => Array.FindIndex(spells, spell => spell.place == place)).ToArray();
        var (known, calendars, calendarOf) = (new Dictionary<string, int>(), new List<OpenTimes>(), new int[Count]);
        for (var i = 0; i < Count; i++)
        {
            var windowed = Windowed(project, i);
            calendarOf[i] = -1;
            if (Pace[i] == Timeline.Pace.WallClock || windowed.Length == 0)
                continue;
            var name = string.Join(' ', windowed);
            if (!known.TryGetValue(name, out calendarOf[i]))
            {
                known.Add(name, calendarOf[i] = calendars.Count);
                calendars.Add(OpenTimes.Of([.. windowed.Select(place => project.Resources[place])],
                    [.. windowed.Select(place => firstSpell[place])]));
            }
        }

        return ([.. calendars], calendarOf, spells);
    }

    // Windows that touch are one.
    private static Resource Whole(Resource resource) =>
        resource.Open is { } open ? resource with { Open = Stretches.Joined(open, 0, int.MaxValue) } : resource;

    private int[] Windowed(Project project, int activity) =>
        [.. Demands[activity].Select(demand => demand.Resource).Where(resource => project.Resources[resource].Open is not null)];

    private int[] Keeping(Project project)
    {
        var keeps = new int[project.Resources.Count];
        Array.Fill(keeps, -1);
        for (var i = 0; i < Count; i++)
        {
            if (Pace[i] == Timeline.Pace.Pausing && Windowed(project, i) is [var only])
                keeps[only] = CalendarOf[i];
        }

        for (var i = 0; i < Count; i++)
        {
            foreach (var demand in Pace[i] == Timeline.Pace.Pausing ? [] : Demands[i])
                keeps[demand.Resource] = -1;
        }

        return keeps;
    }
}

/// <summary>The start of an activity is held to a time after another's.</summary>
/// <param name="Before">Number of the activity it is counted from.</param>
/// <param name="Most">No later than this; the greatest number when there is no such end.</param>
/// <param name="Lag">Place of the lag in the project.</param>
internal readonly record struct Arc(int Before, int Least, int Most, bool FromStart, int Lag);

/// <summary>Units of a resource.</summary>
internal readonly record struct Demand(int Resource, int Units);
