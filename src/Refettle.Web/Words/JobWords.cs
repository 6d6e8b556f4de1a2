using Refettle.Logbook;

namespace Refettle.Web.Words;

/// <summary>What an entry about jobs tells, in a line.</summary>
public static class JobWords
{
    /// <summary>Null when it is about something else.</summary>
    public static string? Of(Happening happening, Car car) => happening switch
    {
        JobEntered entered => $"Job ({entered.Job.Wish.ToString().ToLowerInvariant()}): {entered.Job.Name}",
        JobDropped dropped => $"Job given up: {Name(car, dropped.Job)}{(dropped.Why is null ? "" : $", {dropped.Why}")}",
        JobDone done => $"Job done: {Name(car, done.Job)}{(done.Took is { } took ? $", {took}" : "")}",
        MeansSet set => $"To spend: {Of(set.Means, car.Currency)}",
        ScopeChosen chosen => $"Chosen to do: {Plain.Some(chosen.Jobs.Count, "job")}",
        _ => null,
    };

    public static string Of(Means means, string currency)
    {
        string?[] limits =
        [
            means.Budget is { } budget ? $"{budget.Amount:0.##} {currency}" : null,
            means.Hours is { } hours ? $"{hours}" : null,
            means.By is { } day ? $"ready by {day:yyyy-MM-dd}" : null,
            means.PerPoint is { } rate ? $"{rate.Amount:0.##} {currency} a point" : null,
        ];
        return limits.All(limit => limit is null) ? "no limit" : string.Join(", ", limits.OfType<string>());
    }

    private static string Name(Car car, string job) => car.Jobs.FirstOrDefault(known => known.Id == job)?.Name ?? job;
}
