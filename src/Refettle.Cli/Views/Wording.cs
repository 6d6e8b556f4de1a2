using Refettle.Access;
using Spectre.Console;

namespace Refettle.Cli.Views;

/// <summary>How figures and words are put for a person to read.</summary>
internal static class Wording
{
    /// <summary>Stands at the end of every plan.</summary>
    public const string Safety =
        "The vehicle maker's manual, local rules and licensed practice come first. Never work under a car that is held by a jack alone.";

    public static string Of(Origin origin) => origin switch
    {
        Origin.Default => "default by kind of joint",
        Origin.CommonPractice => "common practice, no source",
        Origin.User => "your own judgement",
        Origin.Measured => "timed on this car",
        _ => "maker's manual",
    };

    public static string Of(Scarcity scarcity) => scarcity switch
    {
        Scarcity.UsedOnly => "used only",
        _ => scarcity.ToString().ToLowerInvariant(),
    };

    /// <summary>The sum, and what it is made of.</summary>
    public static string Of(Cost cost)
    {
        var pieces = new List<string> { $"{cost.Open} to open", $"{cost.Close} to close again" };
        if (cost.Destroyed > Minutes.Zero)
            pieces.Add($"{cost.Destroyed} for what is destroyed or used up");
        if (cost.Unique > Minutes.Zero)
            pieces.Add($"{cost.Unique} for touching what is unique");
        return $"{cost.Total} = {string.Join(" + ", pieces)}";
    }

    /// <summary>How sure an answer is.</summary>
    public static string Of(Plan plan) => plan.Status switch
    {
        PlanStatus.Optimal => "proven: no plan costs less",
        PlanStatus.Feasible => $"a valid plan; none can cost less than {plan.Bound}, whether one costs less than this is not known",
        _ => plan.Obstacle?.Proven ?? false ? "proven: no plan reaches this" : "no plan was found",
    };

    public static string Count(int count, string one, string? many = null) => count == 1 ? $"1 {one}" : $"{count} {many ?? one + "s"}";

    public static string Facts(IEnumerable<Fact> facts) => string.Join(", ", facts);

    public static string Safe(this string text) => Markup.Escape(text);
}
