using NodaTime;
using Refettle.Timeline.Network;
using Refettle.Timeline.Scheduling;

namespace Refettle.Timeline;

/// <summary>Says in words why a task cannot begin when somebody would have it begin.</summary>
public static class MoveRefusal
{
    /// <param name="question">With the task free.</param>
    public static string Why(TimelineQuestion question, string task, LocalDateTime start)
    {
        var made = Projection.Of(question.Car, question.Network, question.Now);
        if (!made.IsGood)
            return made.Faults[0].Found;
        var (projection, minute) = (made.Value, made.Value.Clock.Minute(start));
        var place = projection.Tasks.TakeWhile(one => one.Id != task).Count();
        if (place == projection.Tasks.Count)
            return "there is no such task now";
        return minute < 0 ? "that is past"
            : Closed(projection, place, minute) ?? TooEarly(question, projection, place, minute)
                ?? TooLate(projection, question.Network, place)
            ?? "what is settled after it, or a window before it, leaves no room";
    }

    /// <summary>Something it needs is not there then.</summary>
    private static string? Closed(Projection projection, int place, int minute)
    {
        var activity = projection.Project.Activities[place];
        if (activity.Pace == Pace.WallClock)
            return null;
        var needs = projection.Project.Resources.Where((_, resource) => activity.Demands[resource] > 0).ToList();
        var closed = needs.Find(resource => resource.Open?.All(window => minute < window.Start || minute >= window.End) == true);
        if (closed is not null)
            return closed.Id switch
            {
                "you" => "you are not in the garage then",
                Needed.Helper => "the second pair of hands is not there then",
                _ when closed.Id.StartsWith("air ", StringComparison.Ordinal) =>
                    $"the air does not let it dry then: it needs {closed.Id["air ".Length..]}",
                _ when closed.Id.StartsWith("not ", StringComparison.Ordinal) => "you ruled that day out",
                _ => $"{closed.Id} is not there then",
            };
        var left = needs.Where(resource => resource.Open is not null)
            .Select(resource => resource.Open!.First(window => minute >= window.Start && minute < window.End).End - minute)
            .DefaultIfEmpty(int.MaxValue).Min();
        return activity.Pace == Pace.Unbroken && left < activity.Duration
            ? $"it is not broken off, takes {new Minutes(activity.Duration)}, and {new Minutes(left)} are left then"
            : null;
    }

    /// <summary>Alone with all it waits for, it cannot begin so early.</summary>
    private static string? TooEarly(TimelineQuestion question, Projection projection, int place, int minute)
    {
        var before = question.Network.Links.ToLookup(link => link.After);
        var needed = Onward.From(projection.Tasks[place].Id, id => before[id].Select(link => link.Before))
            .Append(projection.Tasks[place].Id).ToHashSet();
        var only = new TaskNetwork(question.Network.Tasks.Where(task => needed.Contains(task.Id)).ToValueList(),
            question.Network.Links.Where(link => needed.Contains(link.Before) && needed.Contains(link.After)).ToValueList(), []);
        var alone = Projection.Of(question.Car, only, question.Now).Value;
        if (new FirstScheduler().Solve(new(alone.Unpressed), new(TimeSpan.FromSeconds(1))).Schedule is not { } schedule)
            return null;
        var at = alone.Tasks.Select((task, i) => (task.Id, i)).ToDictionary(pair => pair.Id, pair => pair.i);
        var last = before[projection.Tasks[place].Id].OrderByDescending(link => schedule.Finishes[at[link.Before]] + link.Least)
            .FirstOrDefault();
        return last is null || schedule.Finishes[at[last.Before]] + last.Least <= minute ? null
            : $"first: {alone.Tasks[at[last.Before]].Says}, which ends {DayWords.Moment(alone.Clock.At(schedule.Finishes[at[last.Before]]))}{(last.Least > 0 ? $", and {new Minutes(last.Least)} have to pass" : "")}";
    }

    /// <summary>Something that comes after it is settled, or has its last day.</summary>
    private static string? TooLate(Projection projection, TaskNetwork network, int place)
    {
        var after = network.Links.ToLookup(link => link.Before, link => link.After);
        var seen = Onward.From(projection.Tasks[place].Id, id => after[id]);
        var pressed = projection.Tasks.Where(task => seen.Contains(task.Id) || task.Id == projection.Tasks[place].Id)
            .FirstOrDefault(task => task.Latest is not null || (task.FixedStart is not null && seen.Contains(task.Id)));
        return pressed is null
            ? null
            : $"{(seen.Contains(pressed.Id) ? $"\"{pressed.Says}\" comes after it and" : "it")} {(pressed.FixedStart is { } settled ? $"is settled for {DayWords.Moment(settled)}" : $"has to be done by {DayWords.Moment(pressed.Latest!.Value)}")}";
    }
}
