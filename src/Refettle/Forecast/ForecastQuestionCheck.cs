using Refettle.Timeline;

namespace Refettle.Forecast;

/// <summary>What keeps a question from being answered.</summary>
public static class ForecastQuestionCheck
{
    private const int MostFutures = 10_000_000;

    public static ValueList<Fault> Of(ForecastQuestion question)
    {
        var faults = Counts(question).ToList();
        if (faults.Count == 0)
            faults.AddRange([.. Order(question), .. Activities(question), .. Levels(question)]);
        return faults.ToValueList();
    }

    private static IEnumerable<Fault> Counts(ForecastQuestion question)
    {
        var activities = question.Project.Activities.Count;
        if (activities == 0)
            yield return new("forecast", "there is nothing to do", "Choose what is to be done first.");
        if (question.Uncertainties.Count != activities)
            yield return new("forecast", $"{question.Uncertainties.Count} uncertainties for {activities} activities", "Give one for each.");
        if (question.Order.Count != activities || question.Order.Distinct().Count() != activities
            || question.Order.Any(place => place < 0 || place >= activities))
            yield return new("forecast", "the order does not name every activity once", "Take the order of a schedule.");
        if (question.Futures is < 100 or > MostFutures)
            yield return new("futures", $"it is {question.Futures}", $"Give 100 to {MostFutures}.");
        if (question.Confidence is not (> 0 and < 1))
            yield return new("confidence", $"it is {question.Confidence}", "Give more than 0 and less than 1, such as 0.8.");
    }

    private static IEnumerable<Fault> Order(ForecastQuestion question)
    {
        var position = new int[question.Order.Count];
        for (var i = 0; i < position.Length; i++)
            position[question.Order[i]] = i;
        var activities = question.Project.Activities;
        foreach (var lag in question.Project.Lags
            .Where(lag => activities[lag.After].Done is null && activities[lag.Before].Done is null
                && position[lag.Before] >= position[lag.After]))
            yield return new($"activity {activities[lag.After].Id}", $"it stands before {activities[lag.Before].Id}, which it waits for",
                "Put it behind.");
    }

    private static IEnumerable<Fault> Activities(ForecastQuestion question)
    {
        for (var place = 0; place < question.Uncertainties.Count; place++)
        {
            var activity = question.Project.Activities[place];
            if (activity.Duration < 0 || activity.Earliest < 0)
                yield return new($"activity {activity.Id}", "its duration or earliest start is below 0", "Give 0 or more.");
            if (Wrong(question, question.Uncertainties[place]) is { } wrong)
                yield return new($"activity {activity.Id}", wrong, "Mend its estimate.");
            for (var resource = 0; resource < activity.Demands.Count; resource++)
            {
                if (activity.Demands[resource] > question.Project.Resources[resource].Capacity)
                    yield return new($"activity {activity.Id}",
                        $"it asks for {activity.Demands[resource]} of {question.Project.Resources[resource].Id}, of which there are {question.Project.Resources[resource].Capacity}", "Ask for less, or have more.");
            }
        }

        foreach (var missed in question.Missed
            .Where(missed => missed.Chance is not (>= 0 and <= 1) || missed.Resource < 0
                || missed.Resource >= question.Project.Resources.Count))
            yield return new("missed spells", $"the chance is {missed.Chance}", "Give 0 to 1, for a resource of the project.");
    }

    private static string? Wrong(ForecastQuestion question, Uncertainty uncertainty) => uncertainty switch
    {
        ThreePoint three
            when !(three.Least >= 0 && three.Least <= three.Likely && three.Likely <= three.Most && double.IsFinite(three.Most)) =>
            $"its three points {three.Least}, {three.Likely}, {three.Most} are not in order",
        LongTail tail when !(tail.Median > 0 && tail.Sigma >= 0 && double.IsFinite(tail.Median + tail.Sigma)) =>
            $"its median is {tail.Median} and its spread {tail.Sigma}",
        OwnPace own when !(own.Planned >= 0 && double.IsFinite(own.Planned)) => $"its planned time is {own.Planned}",
        Promise promise when !(promise.Promised >= 0 && promise.Lateness is { Factor: > 0, Sigma: >= 0 }) =>
            $"its promise is {promise.Promised}",
        ByLevel by => WrongLevels(question, by),
        Perhaps perhaps => perhaps.Chance is >= 0 and <= 1 ? Wrong(question, perhaps.When) : $"its chance is {perhaps.Chance}",
        _ => null,
    };

    private static string? WrongLevels(ForecastQuestion question, ByLevel by)
    {
        if (question.Levels.FirstOrDefault(level => level.Id == by.Level) is not { } known)
            return $"it follows the level {by.Level}, which is not given";
        if (by.Outcomes.Count != known.Chances[0].Count)
            return $"it has outcomes for {by.Outcomes.Count} levels of {known.Chances[0].Count}";
        return by.Outcomes.All(IsWhole) ? null : "the chances of its outcomes do not add up to 1";
    }

    private static bool IsWhole(ValueList<DurationChance> outcomes) => IsWhole(outcomes.Select(outcome => outcome.Chance));

    private static bool IsWhole(IEnumerable<double> chances) => chances.All(chance => chance >= 0) && Math.Abs(chances.Sum() - 1) < 1e-6;

    private static IEnumerable<Fault> Levels(ForecastQuestion question)
    {
        var seen = new Dictionary<string, int>();
        foreach (var level in question.Levels)
        {
            var rows = level.Parent is null ? 1 : seen.GetValueOrDefault(level.Parent);
            if (level.Chances.Count != rows || level.Chances.Any(row => row.Count is 0 or > 255 || !IsWhole(row)))
                yield return new($"level {level.Id}", "its chances do not fit its parent, or do not add up to 1",
                    "Give one row for each level of the parent, which comes first.");
            seen[level.Id] = level.Chances.Count == 0 ? 0 : level.Chances[0].Count;
        }
    }
}
