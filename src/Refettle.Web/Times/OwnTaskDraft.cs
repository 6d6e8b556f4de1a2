using Refettle.Logbook;
using Refettle.Web.Edits;

namespace Refettle.Web.Times;

/// <summary>A task of the owner's while it is typed.</summary>
public sealed class OwnTaskDraft(OwnTask task)
{
    public string Name { get; set; } = task.Name;

    public string Minutes { get; set; } = task.Takes == Refettle.Minutes.Zero ? "" : Figures.Text(task.Takes.Value);

    public bool IsWait { get; set; } = task.IsWait;

    public bool IsUnbroken { get; set; } = task.IsUnbroken;

    public ValueList<string> After { get; private set; } = task.After;

    public ValueList<string> Before { get; private set; } = task.Before;

    public HashSet<string> Uses { get; } = [.. task.Uses];

    /// <summary>One that nothing is known of yet.</summary>
    public static OwnTask Blank { get; } = new() { Id = "new", Name = "", Takes = Refettle.Minutes.Zero };

    /// <summary>It comes after another, or no longer.</summary>
    public void TurnAfter(string other) => After = Turned(After, other);

    /// <summary>It comes before another, or no longer.</summary>
    public void TurnBefore(string other) => Before = Turned(Before, other);

    /// <summary>The task as typed, under an identifier; checked like one that is typed at a prompt.</summary>
    public Result<TaskAdded> ToHappening(CarHistory history, string id)
    {
        var place = Name.Trim() is { Length: > 0 } name ? name : "task";
        var figures = new Figures(place);
        var typed = task with
        {
            Id = id,
            Name = Name.Trim(),
            Takes = new(figures.Number("how many minutes it takes", Minutes)),
            IsWait = IsWait,
            IsUnbroken = IsUnbroken,
            After = After,
            Before = Before,
            Uses = Uses.Order(StringComparer.Ordinal).ToValueList(),
        };
        return figures.Checked(history, new TaskAdded(typed), $"task {id}");
    }

    private static ValueList<string> Turned(ValueList<string> tasks, string other) =>
        tasks.Contains(other) ? tasks.Where(one => one != other).ToValueList() : [.. tasks, other];
}
