namespace Refettle.Logbook;

/// <summary>The owner's tasks and terms while a log is folded. Terms are kept by the task's name: a task that is not derived today may be
/// derived again tomorrow.</summary>
internal sealed class TaskBook
{
    private readonly Dictionary<string, OwnTask> _own = [];
    private readonly Dictionary<string, TaskTerms> _terms = [];
    private readonly Dictionary<string, TaskMark> _marks = [];
    private ValueList<KeptTask> _kept = [];

    /// <returns>Why it does not fit; null when it does, or tells of something else.</returns>
    public string? Apply(Happening happening) => happening switch
    {
        TaskAdded added => CalendarBuilder.Put(_own, added.Task.Id, added.Task),
        TaskRemoved removed => _own.Remove(removed.Task) ? null : $"there is no task {removed.Task} that was added by hand",
        TaskTimed timed => Set(timed.Task, terms => terms with { Takes = timed.Takes }),
        TaskSplit split => Set(split.Task, terms => terms with { Parts = split.Parts }),
        TaskFixed set => Set(set.Task, terms => terms with { Start = set.Start }),
        TaskForbidden forbidden => Set(forbidden.Task, terms => terms with { Not = [.. terms.Not, forbidden.Days] }),
        TaskEquipped equipped => Set(equipped.Task, terms => terms with { Uses = equipped.Uses }),
        TaskMarked marked => Mark(marked.Mark),
        TimelineKept kept => Keep(kept.Tasks),
        _ => null,
    };

    public CarCalendar AddTo(CarCalendar calendar) => calendar with
    {
        Tasks = CalendarBuilder.InOrder(_own),
        Terms = CalendarBuilder.InOrder(_terms),
        Marks = CalendarBuilder.InOrder(_marks),
        Kept = _kept,
    };

    private string? Set(string task, Func<TaskTerms, TaskTerms> change)
    {
        var terms = change(_terms.GetValueOrDefault(task) ?? TaskTerms.None(task));
        if (terms == TaskTerms.None(task))
            _terms.Remove(task);
        else
            _terms[task] = terms;
        return null;
    }

    private string? Mark(TaskMark mark)
    {
        if (mark.Progress == TaskProgress.Ahead)
            _marks.Remove(mark.Task);
        else
            _marks[mark.Task] = mark;
        return null;
    }

    private string? Keep(ValueList<KeptTask> kept)
    {
        _kept = kept;
        return null;
    }
}
