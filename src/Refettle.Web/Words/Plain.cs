using Refettle.Access;

namespace Refettle.Web.Words;

/// <summary>Plain words for figures and choices.</summary>
public static class Plain
{
    /// <summary>Unicode's word joiner: it has no width, and no line ends at it.</summary>
    private const char WordJoiner = '\u2060';

    /// <summary>Days stay on one line where there is room for them: browsers part lines behind each of their hyphens.</summary>
    public static string Whole(string text) => text.Replace("-", $"-{WordJoiner}", StringComparison.Ordinal);

    public static string Word(JointKind kind) => kind == JointKind.PressFit ? "Press fit" : kind.ToString();

    public static string Word(Scarcity scarcity) => scarcity switch
    {
        Scarcity.Stocked => "Stocked",
        Scarcity.UsedOnly => "Used only",
        Scarcity.Discontinued => "No longer made",
        _ => "Unique: there is no other",
    };

    public static string Word(WorkPlace place) => place == WorkPlace.OnCar ? "On the car" : "On the bench";

    public static string Word(Side side) => side switch { Side.Left => "Left", Side.Right => "Right", _ => "No side" };

    public static string Word(Hazard hazard) => hazard switch
    {
        Hazard.Fuel => "Fuel",
        Hazard.BrakeFluid => "Brake fluid",
        Hazard.Airbag => "Airbag",
        Hazard.Rubber => "Rubber",
        Hazard.Plastic => "Plastic",
        Hazard.SpringLoad => "Spring under load",
        Hazard.Refrigerant => "Refrigerant",
        Hazard.HotCoolant => "Hot coolant",
        Hazard.FrictionDust => "Friction dust",
        Hazard.Oil => "Oil",
        Hazard.Mercury => "Mercury",
        Hazard.Asbestos => "May hold asbestos",
        _ => "Battery acid",
    };

    /// <summary>Where a figure comes from, so that a default is never taken for a fact.</summary>
    public static string Word(Origin origin) => origin switch
    {
        Origin.Default => "a default, filled in by the program",
        Origin.CommonPractice => "common practice, no source",
        Origin.User => "your judgement",
        Origin.Measured => "measured on this car",
        _ => "the maker's manual",
    };

    public static string Days(int days) => days == 1 ? "1 day" : $"{days} days";

    public static string Posture(string posture) => posture switch
    {
        "under" => "under the car",
        "inside" => "inside the car",
        "bench" => "at the bench",
        _ => posture,
    };

    /// <summary><c>1 part</c>, <c>2 parts</c>.</summary>
    public static string Some(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    /// <summary>Rounded as a person would say it: <c>12 min</c>, <c>2 h 10</c>.</summary>
    public static string Time(Minutes minutes)
    {
        var whole = (int)Math.Round(minutes.Value, MidpointRounding.AwayFromZero);
        if (whole == 0 && minutes.Value > 0)
            return "under 1 min";
        return whole < 90 ? $"{whole} min" : whole % 60 == 0 ? $"{whole / 60} h" : $"{whole / 60} h {whole % 60:00}";
    }

    /// <summary>How sure the answer is.</summary>
    public static string Proof(Plan plan) => plan.Status switch
    {
        PlanStatus.Optimal => $"Proven: on these figures no plan counts less than {Time(plan.Cost.Total)} in all.",
        PlanStatus.Feasible =>
            $"It works and counts {Time(plan.Cost.Total)} in all. A better plan may exist, but none under {Time(plan.Bound)}.",
        _ => "This cannot be done as things stand.",
    };
}
