using Refettle.Scope;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Whether one more job fits.</summary>
internal static class BrakeView
{
    public static IRenderable Of(Car car, Brake brake) => new Rows([
        new Text(brake.Breaches.Count == 0 ? $"{brake.Job} fits." : $"{brake.Job} does not fit:"),
        .. Lines(car, brake).Select(line => new Text($"  {line}")),
    ]);

    /// <summary>What it takes, what it breaks, what would make room.</summary>
    public static IEnumerable<string> Lines(Car car, Brake brake)
    {
        if (brake.Cost is { } cost)
            yield return $"it takes {ScopeView.Takes(cost.Takes, car.Currency)} given the rest{(cost.Since is null ? "" : $", {ScopeView.Since(car, cost.Since)}")}";
        foreach (var breach in brake.Breaches)
            yield return Breach(car, breach);
        if (brake.Breaches.Count > 0)
            yield return Room(brake);
    }

    private static string Breach(Car car, Breach breach) => breach.Limit switch
    {
        ScopeLimit.Time =>
            $"with it there are {breach.Needed / 60:0.0} h of work in {breach.Given / 60:0.0} h: {(breach.Needed - breach.Given) / 60:0.0} h too much",
        ScopeLimit.Money =>
            $"with it there are {breach.Needed:0} {car.Currency} to spend of {breach.Given:0}: {breach.Needed - breach.Given:0} too much",
        _ => $"its waits alone take {breach.Needed:0.#} days, and {breach.Given:0} are left",
    };

    private static string Room(Brake brake) => brake.Room switch
    {
        null => "nothing that may go makes room for it",
        { Count: 0 } => "another way of opening makes room for it",
        var gone => $"it fits if {string.Join(", ", gone)} {(gone.Count == 1 ? "goes" : "go")}: that loses least",
    };
}
