using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What the owner adds and sets: tasks of his own, how long a task takes him, when it starts, parts,
/// days without it, how far it is.</summary>
internal sealed class OwnersTerms(NetworkDraft draft, Car car)
{
    private const string NoSuchTask = "there is no such task now";

    public void AddTasks()
    {
        foreach (var (own, id) in car.Calendar.Tasks.Select(own => (own, draft.Add(TaskOf(own)))).ToList())
            Link(own, id);
    }

    /// <summary>What tasks of any origin need beside what is derived. Before moves are made, which themselves stay as they are.</summary>
    public void Equip()
    {
        foreach (var terms in car.Calendar.Terms.Where(terms => terms.Uses.Count > 0 && draft.Has(terms.Task)))
            draft.Change(terms.Task,
                task => task with
                {
                    At = PlaceOf(terms.Uses) ?? task.At,
                    Uses = task.Uses.Concat(terms.Uses.Select(Needed.Facility)).Distinct().ToValueList()
                });
    }

    /// <summary>For tasks of any origin: all of them are there by then.</summary>
    public void Apply()
    {
        foreach (var terms in car.Calendar.Terms)
            Apply(terms);
        foreach (var mark in car.Calendar.Marks)
            Apply(mark);
    }

    private WorkTask TaskOf(OwnTask own) => new()
    {
        Id = own.Id,
        Kind = own.IsWait ? TaskKind.Wait : TaskKind.Own,
        Says = own.Name,
        Takes = StripTasks.Whole(own.Takes.Value),
        Origin = Origin.User,
        Pace = own.IsWait ? Pace.WallClock : own.IsUnbroken ? Pace.Unbroken : Pace.Pausing,
        At = PlaceOf(own.Uses),
        Uses = own.Uses.Select(Needed.Facility).ToValueList(),
    };

    private string? PlaceOf(ValueList<string> uses) =>
        uses.FirstOrDefault(id => car.Calendar.Facilities.Any(one => one.Id == id && one.Kind == FacilityKind.Place));

    /// <param name="id">Its name here: where a task that follows from the car has the one it was
    /// given, that name stays with the other.</param>
    private void Link(OwnTask own, string id)
    {
        if (id != own.Id)
            draft.Notes.Add(Note(own.Id, $"a task that follows from the car has this name: yours is {id} here",
                "Add it again under a name of its own, and remove this one."));
        foreach (var other in own.After)
            Link(id, other, "after", (other, id));
        foreach (var other in own.Before)
            Link(id, other, "before", (id, other));
    }

    private void Link(string id, string other, string how, (string Before, string After) link)
    {
        if (!draft.Has(other))
            draft.Notes.Add(Note(id, $"it is to come {how} {other}: {NoSuchTask}", Near(other)));
        else if (!draft.TryLink(link.Before, link.After, "as you said"))
            draft.Notes.Add(Note(id, $"{link.Before} before {link.After} is left out: {link.After} comes before {link.Before} already",
                "Change one of them."));
    }

    private void Apply(TaskTerms terms)
    {
        if (!draft.Has(terms.Task))
        {
            draft.Notes.Add(Note(terms.Task, $"terms are set for it, and {NoSuchTask}", Near(terms.Task)));
            return;
        }

        draft.Change(terms.Task, task => task with
        {
            Takes = terms.Takes is { } takes ? StripTasks.Whole(takes.Value) : task.Takes,
            Origin = terms.Takes is null ? task.Origin : Origin.User,
            FixedStart = terms.Start,
            Not = terms.Not,
        });
        if (terms.Parts.Count > 1)
            Split(terms.Task, terms.Parts);
    }

    /// <summary>The last part keeps the name, so that what waits for the task waits for the whole of it.</summary>
    private void Split(string id, ValueList<Minutes> parts)
    {
        var whole = draft[id];
        var before = draft.DirectlyBefore(id).ToList();
        var links = draft.Links.Where(link => link.After == id).ToDictionary(link => link.Before);
        var steps = Dealt(whole, parts);
        var last = "";
        for (var i = 0; i < parts.Count - 1; i++)
        {
            var part = draft.Add(whole with
            {
                Id = $"{id}.part-{i + 1}",
                Takes = StripTasks.Whole(parts[i].Value),
                Origin = Origin.User,
                Steps = steps[i],
                FixedStart = i == 0 ? whole.FixedStart : null,
                Says = $"{whole.Says} (part {i + 1})"
            });
            foreach (var one in i == 0 ? before : [last])
                draft.Link(one, part, i == 0 ? links[one].Least : 0, i == 0 ? links[one].Most : null);
            last = part;
        }

        foreach (var one in before.Where(one => links[one].Most is not null))
            draft.Unlink(one, id);
        draft.Link(last, id);
        draft.Change(id,
            task => task with
            {
                Takes = StripTasks.Whole(parts[parts.Count - 1].Value),
                Origin = Origin.User,
                Steps = steps[parts.Count - 1],
                FixedStart = null,
                Says = $"{whole.Says} (part {parts.Count})"
            });
    }

    /// <summary>Steps go to the parts in their order, by their share of the minutes.</summary>
    private static List<ValueList<Step>> Dealt(WorkTask task, ValueList<Minutes> parts)
    {
        var (all, sum) = (parts.Sum(part => part.Value), task.Steps.Count);
        var dealt = new List<ValueList<Step>>();
        var (passed, first) = (0m, 0);
        foreach (var part in parts)
        {
            passed += part.Value;
            var end = (int)Math.Round(sum * passed / all);
            dealt.Add(task.Steps.Skip(first).Take(end - first).ToValueList());
            first = end;
        }

        return dealt;
    }

    private void Apply(TaskMark mark)
    {
        if (draft.Has(mark.Task) && !(mark.Progress == TaskProgress.Done && ComesAgain(draft[mark.Task])))
            draft.Change(mark.Task, task => task with { Mark = mark });
    }

    /// <summary>A check is done again when something was opened since, and waste is handed in once
    /// more when it was not all there.</summary>
    private bool ComesAgain(WorkTask task)
    {
        if (task is { Kind: TaskKind.Check, Unseen: [var first, ..] })
            draft.Notes.Add(Note(task.Id, $"it was marked as done, and {first} is so by the log, or became so after it, or will",
                "It is done once more. Mark it when all that it checks is closed by the log."));
        return task.Unseen.Count > 0
            || (task.Kind == TaskKind.HandIn
                && (PaintLeft.Of(car).Any() || draft.DirectlyBefore(task.Id).Any(id => draft[id].Mark?.Progress != TaskProgress.Done)));
    }

    private string Near(string task) => NearNames.Ask(task, draft.Tasks.Select(one => one.Id), "Look at the list of the timeline.");

    private static Fault Note(string task, string found, string mend) => new($"task {task}", found, mend) { Severity = Severity.Note };
}
