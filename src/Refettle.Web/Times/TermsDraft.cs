using NodaTime;
using Refettle.Logbook;
using Refettle.Web.Edits;

namespace Refettle.Web.Times;

/// <summary>What is set for a task while it is typed.</summary>
public sealed class TermsDraft(TaskTerms terms)
{
    /// <summary>How long it takes its owner; empty for what is derived.</summary>
    public string Minutes { get; set; } = Figures.Text(terms.Takes?.Value);

    /// <summary>The minutes of its parts in a row; empty for whole.</summary>
    public string Parts { get; set; } = string.Join(' ', terms.Parts.Select(part => Figures.Text(part.Value)));

    /// <summary>The first day of those that are to be ruled out now.</summary>
    public DateOnly? NotFrom { get; set; }

    /// <summary>The last of them; empty for that one day.</summary>
    public DateOnly? NotUntil { get; set; }

    public HashSet<string> Uses { get; } = [.. terms.Uses];

    /// <summary>An entry for each thing that was changed; checked like those that are typed at a prompt.</summary>
    public Result<ValueList<Happening>> ToHappenings(CarHistory history)
    {
        var figures = new Figures($"task {terms.Task}");
        var typed = Typed(figures).ToValueList();
        var faults = figures.Faults.Count > 0 ? figures.Faults : typed.SelectMany(one => HappeningCheck.Of(history, one)).ToValueList();
        return faults.Count > 0 ? Result<ValueList<Happening>>.Bad(faults) : Result<ValueList<Happening>>.Good(typed);
    }

    private IEnumerable<Happening> Typed(Figures figures)
    {
        Minutes? takes = figures.Maybe("how many minutes it takes", Minutes) is { } minutes ? new Minutes(minutes) : null;
        if (takes != terms.Takes)
            yield return new TaskTimed(terms.Task, takes);
        var parts = Parts.Split([' ', ';', '+'], StringSplitOptions.RemoveEmptyEntries)
            .Select(part => new Minutes(figures.Number("the minutes of a part", part))).ToValueList();
        if (!parts.Equals(terms.Parts))
            yield return new TaskSplit(terms.Task, parts);
        if ((NotFrom ?? NotUntil) is { } first)
            yield return new TaskForbidden(terms.Task, new(LocalDate.FromDateOnly(first), LocalDate.FromDateOnly(NotUntil ?? first)));
        var uses = Uses.Order(StringComparer.Ordinal).ToValueList();
        if (!Uses.SetEquals(terms.Uses))
            yield return new TaskEquipped(terms.Task, uses);
    }
}
