using Refettle.Access.Fire;

namespace Refettle.Access;

/// <summary>The usual cautions of how and with what one works. Sources beside each; the vehicle maker's manual, local codes
/// and licensed practice come first.</summary>
public static class UsualCautions
{
    /// <summary>HSE INDG434; most deaths in repair shops are under badly supported vehicles.</summary>
    public const string Under =
        "Under the car: it stands on rated stands under its strong points, on firm level ground, wheels chocked; never under a jack alone.";

    /// <summary>HSE INDG434; 29 CFR 1910.244(a)(1)-(2).</summary>
    public const string Raise =
        "Jack and stands rated for it, under the maker's lifting points, on firm level ground, wheels chocked. A jack lifts, stands carry: rock the car on them before anyone goes under.";

    /// <summary>29 CFR 1910.244(a)(2): a load raised is blocked at once.</summary>
    public const string Lower = "Nobody and nothing under the car while it comes down.";

    /// <summary>29 CFR 1910.244(a)(2).</summary>
    public const string Load =
        "A raised load is blocked at once: nobody under what only a jack, crane or hoist holds. Rated for the load; slings sound.";

    /// <summary>29 CFR 1910.252(a): combustibles away, extinguisher, fire watch of at least half an hour.</summary>
    public const string Fire =
        "Flame, sparks or cutting: only with fuel, filled brake lines and airbags near it off or made safe. Extinguisher and water at hand, eyes and ears covered; know what lies behind. Fire watch for 30 minutes at least afterwards.";

    /// <summary>OSHA on zinc, cadmium and chlorinated solvents near heat; HSE on fluoroelastomers.</summary>
    public const string Fumes =
        "Heat on plating, paint, sealer or rubber gives poisonous fumes: fresh air, mask. No flame on seals of fluoro-rubber (acid above 300 °C), no chlorinated cleaner near heat or arc (phosgene).";

    /// <summary>ISO 898-1: quenched and tempered fasteners from class 8.8 on lose their strength; springs
    /// and bearings are trade practice.</summary>
    public const string Heated =
        "What was heated is scrap: bolts of class 8.8 and stronger, insert nuts, springs, wheel bearings. New ones at refit.";

    private static readonly string[] _lifting = ["jack", "jacks", "crane", "cranes", "hoist", "hoists", "sling", "slings"];

    private static readonly JointKind[] _fasteners = [JointKind.Bolt, JointKind.Nut, JointKind.Stud, JointKind.Screw];

    /// <summary>Of the tool: what lifts, and compressors of springs.</summary>
    public static IEnumerable<string> OfTool(string? tool)
    {
        if (HotWork.WordsOf(tool).Any(_lifting.Contains))
            yield return Load;
        if (tool?.Contains("spring compressor", StringComparison.OrdinalIgnoreCase) == true)
            yield return Cautions.Caution(Hazard.SpringLoad)!;
    }

    /// <summary>Of heat, flame, sparks and cutting.</summary>
    /// <param name="joint">What is heated; null for what is no joint.</param>
    public static IEnumerable<string> OfDanger(Danger danger, Joint? joint)
    {
        if ((danger & Danger.Fire) != 0)
            yield return Fire;
        if ((danger & (Danger.Heat | Danger.Flame)) == 0)
            yield break;
        yield return Fumes;
        if (joint is not null && IsScrapWhenHeated(joint))
            yield return Heated;
    }

    /// <summary>Whether heat takes the strength of what holds a joint.</summary>
    public static bool IsScrapWhenHeated(Joint joint) =>
        joint.Thread is not null || joint.Grade is not null || _fasteners.Contains(joint.Kind);

    /// <summary>Of a state that is brought about: what its name says is in it, and what changes of stance ask for.</summary>
    public static IEnumerable<string> OfState(State state)
    {
        if (state.IsStance)
            return [state.Id == Car.OnWheels ? Lower : Raise];
        var words = $"{state.Id} {state.Name}";
        return state.Drains
            .Concat(_stateWords.Where(pair => pair.Words.Any(word => words.Contains(word, StringComparison.OrdinalIgnoreCase)))
                .Select(pair => pair.Hazard))
            .Distinct().Select(Cautions.Caution).OfType<string>();
    }

    private static readonly (Hazard Hazard, string[] Words)[] _stateWords =
    [
        (Hazard.Fuel, ["fuel", "petrol"]), (Hazard.BrakeFluid, ["brakes-drained", "brake fluid", "brake-fluid"]),
        (Hazard.Airbag, ["airbag"]), (Hazard.SpringLoad, ["spring"]),
        (Hazard.Refrigerant, ["refrigerant", "air-con", "aircon"]), (Hazard.HotCoolant, ["coolant"]), (Hazard.BatteryAcid, ["battery"]),
    ];
}
