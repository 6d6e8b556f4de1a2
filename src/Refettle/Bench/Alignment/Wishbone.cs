namespace Refettle.Bench.Alignment;

/// <summary>Camber by changing a double wishbone, and camber over travel.</summary>
public static class Wishbone
{
    private const string Planar =
        "Planar model of rigid arms: no caster change, no rubber. The points must be measured to 1 mm to know the camber change to a few per cent.";

    private static readonly Input<ValueList<double>> LowerInner = Inputs.Point("lower-inner", "inner pivot of the lower arm");
    private static readonly Input<ValueList<double>> LowerOuter = Inputs.Point("lower-outer", "ball joint of the lower arm");
    private static readonly Input<ValueList<double>> UpperInner = Inputs.Point("upper-inner", "inner pivot of the upper arm");
    private static readonly Input<ValueList<double>> UpperOuter = Inputs.Point("upper-outer", "ball joint of the upper arm");
    private static readonly Input<ValueList<double>> Wheel = Inputs.Point("wheel", "wheel centre");
    private static readonly Input<double> Camber = Inputs.Quantity("camber", "camber now, top outward positive", Units.Degree, -15, 15);
    private static readonly Input<double> Target = Inputs.Quantity("target", "camber wanted", Units.Degree, -15, 15);
    private static readonly Input<string> Adjust = Inputs.Choice("adjust",
        "what is changed; a shim's figure is how far the pivot moves outward, which way its shims work depends on the car", "upper-arm",
        "lower-arm", "upper-shim", "lower-shim");
    private static readonly Input<double> Travel =
        Inputs.Quantity("travel", "wheel upward from where it is, bump positive", Units.Millimetre, -150, 150);
    private static readonly Input<ValueList<double>> RodInner = Inputs.Point("rod-inner", "inner joint of the tie rod").Optional();
    private static readonly Input<ValueList<double>> RodOuter = Inputs.Point("rod-outer", "outer joint of the tie rod").Optional();
    private static readonly Input<double> SteerArm = Inputs.Quantity("steer-arm",
        "from the steering axis to the rod's outer joint, lengthwise: ahead of the axle positive, behind negative", Units.Millimetre, -400,
        400).Optional();

    private static readonly ValueList<Input> Points = [LowerInner, LowerOuter, UpperInner, UpperOuter, Wheel, Camber];

    private const string Geometry =
        "lower-inner=350,200mm lower-outer=700,180mm upper-inner=400,450mm upper-outer=670,460mm wheel=760,300mm camber=-0.5deg";

    public static BenchNumber Number { get; } = new()
    {
        Name = "wishbone",
        Says = "Arm length or shim change for a target camber, and what it does to toe and track",
        Room = "Alignment",
        Formula = "upper ball joint = circle(upper pivot, arm) ∩ circle(lower ball joint, upright); camber changes as the upright leans; tie rod to first order",
        Source = "Geometry of the four-bar linkage; checked against an independent solver",
        Uncertainty = Planar + " Toe is set after camber, always: the figure here says how far off it will be.",
        Inputs = [.. Points, Target, Adjust, RodInner, RodOuter, SteerArm],
        Example = Geometry + " target=-1deg adjust=upper-arm",
        Work = Work,
    };

    public static BenchNumber TravelNumber { get; } = new()
    {
        Name = "wishbone-travel",
        Says = "Camber and track when the wheel moves up or down",
        Room = "Alignment",
        Formula = "as for wishbone, lower arm swung until the wheel centre is at its height; initial gain = 1 / swing arm",
        Source = "Geometry of the four-bar linkage; checked against an independent solver",
        Uncertainty = Planar,
        Inputs = [.. Points, Travel],
        Example = Geometry + " travel=30mm",
        Work = WorkTravel,
    };

    private static Result<DoubleWishbone> Linkage(Given given)
    {
        var linkage = new DoubleWishbone(
            At(given, LowerInner), At(given, LowerOuter), At(given, UpperInner), At(given, UpperOuter), At(given, Wheel), given.Of(Camber));
        var shortest = Math.Min(linkage.UprightLength, Math.Min(linkage.LowerLength, linkage.UpperLength));
        return shortest < 50
            ? Bad("upper-outer", $"an arm or the upright is only {Measure.Figure(shortest)} mm long",
                "Check the points: outward first, then up")
            : linkage.UpperOuter.Up <= linkage.LowerOuter.Up
            ? Bad("upper-outer", "the upper ball joint is not above the lower one", "Check the points: outward first, then up")
            : linkage.WheelCentre.Up <= 0 ? Bad("wheel", "the wheel centre is not above the ground", "Measure heights from the ground")
            : Result<DoubleWishbone>.Good(linkage);
    }

    private static Result<Outcome> Work(Given given)
    {
        var (linkage, rod) = (Linkage(given), Rod(given));
        if (!linkage.IsGood || !rod.IsGood)
            return Result<Outcome>.Bad(linkage.Faults.Concat(rod.Faults));
        var values = new List<BenchValue>();
        foreach (var held in Enum.GetValues<Held>())
        {
            if (CamberTarget.Solve(linkage.Value, AdjusterOf(given), held, given.Of(Target)) is not { } change)
                return Outcome.Refuse("target", $"no change of up to {CamberTarget.MostMillimetres} mm reaches it",
                    "Adjust something else, or look for a bent part");
            values.AddRange(Consequences(linkage.Value, rod.Value, AdjusterOf(given), held, change));
        }

        return Outcome.Judged(values.ToValueList(), verdict: null,
            rod.Value.Rod is null ? "Toe is not computed: it takes rod-inner, rod-outer and steer-arm." : null,
            values.Max(value => value.Unit == Units.Millimetre ? Math.Abs(value.Value) : 0) > 10
                ? "A large change: look for a bent part or a sagged spring first."
                : null,
            "Lengthening adjusters have a least thread engagement; set toe afterwards.");
    }

    private static IEnumerable<BenchValue> Consequences(
        DoubleWishbone linkage, TieRodGiven rod, Adjuster adjuster, Held held, double change)
    {
        var posture = linkage.After(CamberTarget.Change(adjuster, change), held)!.Value;
        var where = held == Held.RideHeight ? ", at ride height" : ", lower arm still";
        yield return new("change" + where, change, Units.Millimetre);
        yield return new("track on this side" + where, Track.ChangeMillimetres(linkage, posture), Units.Millimetre);
        if (rod.Rod is { } tieRod)
            yield return new("toe change, toe-in positive" + where, tieRod.ToeChangeDegrees(linkage, posture), Units.Degree);
    }

    private static Result<Outcome> WorkTravel(Given given)
    {
        var linkage = Linkage(given);
        if (!linkage.IsGood)
            return Result<Outcome>.Bad(linkage.Faults);
        if (linkage.Value.After(new(WheelUp: given.Of(Travel)), Held.RideHeight) is not { } posture)
            return Outcome.Refuse("travel", "the linkage does not reach so far", "Give less travel");
        ValueList<BenchValue> values =
        [
            new("camber", posture.CamberDegrees, Units.Degree),
            new("track on this side", Track.ChangeMillimetres(linkage.Value, posture), Units.Millimetre),
        ];
        return linkage.Value.InstantCentre() is { } centre && Math.Abs(linkage.Value.WheelCentre.Out - centre.Out) > 1
            ? Outcome.Of([.. values, .. Swing(linkage.Value.WheelCentre.Out - centre.Out)])
            : Outcome.Of(values);
    }

    private static IEnumerable<BenchValue> Swing(double arm) =>
        [new("swing arm", arm, Units.Millimetre), new("initial camber gain, top inward", 180 / Math.PI / arm, Units.DegreePerMillimetre)];

    private static Adjuster AdjusterOf(Given given) => given.Of(Adjust) switch
    {
        "upper-arm" => Adjuster.UpperArm,
        "lower-arm" => Adjuster.LowerArm,
        "upper-shim" => Adjuster.UpperShim,
        _ => Adjuster.LowerShim,
    };

    private static Result<TieRodGiven> Rod(Given given)
    {
        var count = new Input[] { RodInner, RodOuter, SteerArm }.Count(given.Has);
        if (count == 0)
            return Result<TieRodGiven>.Good(new(null));
        if (count < 3)
            return Result<TieRodGiven>.Bad(
                new Fault("rod-inner", "the tie rod is given in part", "Give rod-inner, rod-outer and steer-arm, or none of them"));
        var rod = new TieRod(At(given, RodInner), At(given, RodOuter), given.Of(SteerArm));
        return Math.Abs(rod.SteerArmMillimetres) < 20 || Math.Abs(rod.Outer.Out - rod.Inner.Out) < 50
            ? Result<TieRodGiven>.Bad(new Fault("steer-arm", "the steering arm or the rod is too short to be real",
                "Give at least 20 mm of arm and 50 mm of rod"))
            : Result<TieRodGiven>.Good(new(rod));
    }

    private static Point At(Given given, Input<ValueList<double>> input) => new(given.Of(input)[0], given.Of(input)[1]);

    private static Result<DoubleWishbone> Bad(string place, string found, string mend) =>
        Result<DoubleWishbone>.Bad(new Fault(place, found, mend));

    /// <summary>The tie rod, or null when none was given.</summary>
    private sealed record TieRodGiven(TieRod? Rod);
}
