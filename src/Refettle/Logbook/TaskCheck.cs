namespace Refettle.Logbook;

/// <summary>Whether a task, or terms for one, may be written into a car's log. Whether a task of that name is derived today only the
/// timeline knows.</summary>
internal static class TaskCheck
{
    public static IEnumerable<Fault> Of(CarCalendar calendar, Happening happening) => happening switch
    {
        TaskAdded added => OfTask(calendar, added.Task),
        TaskRemoved removed => CalendarCheck.Known("task", removed.Task, calendar.Tasks.Select(task => task.Id)),
        TaskTimed timed => Named(timed.Task).Concat(timed.Takes is { } takes ? OfMinutes(timed.Task, takes) : []),
        TaskSplit split => Named(split.Task).Concat(split.Parts.SelectMany(part => OfMinutes(split.Task, part))).Concat(OfParts(split)),
        TaskFixed set => Named(set.Task),
        TaskForbidden forbidden => Named(forbidden.Task).Concat(OfDays(forbidden)),
        TaskEquipped equipped =>
            Named(equipped.Task)
                .Concat(OfUses(calendar, equipped.Task, equipped.Uses,
                    calendar.Tasks.FirstOrDefault(own => own.Id == equipped.Task)?.Uses ?? [])),
        TaskMarked marked => Named(marked.Mark.Task),
        _ => [],
    };

    private static IEnumerable<Fault> Named(string task) => CalendarCheck.OfIdentifier("task", task);

    private static IEnumerable<Fault> OfTask(CarCalendar calendar, OwnTask task)
    {
        var place = $"task {task.Id}";
        foreach (var fault in Named(task.Id).Concat(CalendarCheck.OfWords(place, task.Name)).Concat(OfMinutes(task.Id, task.Takes)))
            yield return fault;
        if (task.After.Concat(task.Before).Contains(task.Id))
            yield return new(place, "it is to come before or after itself", "Name another task.");
        foreach (var fault
            in OfUses(calendar, task.Id, task.Uses, calendar.Terms.FirstOrDefault(terms => terms.Task == task.Id)?.Uses ?? []))
            yield return fault;
    }

    /// <param name="already">What it needs by another entry.</param>
    private static IEnumerable<Fault> OfUses(CarCalendar calendar, string task, ValueList<string> uses, ValueList<string> already)
    {
        foreach (var fault
            in uses.SelectMany(facility => CalendarCheck.Known("facility", facility, calendar.Facilities.Select(known => known.Id))))
            yield return fault;
        var places = uses.Concat(already).Distinct()
            .Where(id => calendar.Facilities.Any(one => one.Id == id && one.Kind == FacilityKind.Place)).ToList();
        if (places.Count > 1)
            yield return new($"task {task}", $"the car is to stand at {string.Join(" and ", places)}",
                "Name one place; what is done at the other is a task of its own.");
    }

    private static IEnumerable<Fault> OfMinutes(string task, Minutes minutes)
    {
        if (minutes.Value is < 0 or > Minutes.Max)
            yield return new($"task {task}", $"{minutes.Value} min", $"Give 0 to {Minutes.Max} min.");
    }

    private static IEnumerable<Fault> OfParts(TaskSplit split)
    {
        if (split.Parts.Count is 1 or > 50 || split.Parts.Any(part => part.Value == 0))
            yield return new($"task {split.Task}", $"it is split into {split.Parts.Count}",
                "Give the minutes of 2 to 50 parts, each more than 0, or none to make it whole.");
    }

    private static IEnumerable<Fault> OfDays(TaskForbidden forbidden)
    {
        if (forbidden.Days.Last < forbidden.Days.First)
            yield return new($"task {forbidden.Task}", "the last day is before the first", "Exchange them.");
    }
}
