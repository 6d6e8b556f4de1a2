namespace Refettle.Bench.Torque;

/// <summary>Wrench setting when an adapter lengthens or shortens the lever.</summary>
public static class Adapter
{
    private static readonly Input<double> Lever = Inputs.Quantity("lever",
        "from the square drive to the middle of the hand, not the tool's whole length", Units.Millimetre, 50, 2000);
    private static readonly Input<double> Offset =
        Inputs.Quantity("offset", "from the square drive to the bolt", Units.Millimetre, 0, 1000);
    private static readonly Input<double> Angle = Inputs.Quantity("angle",
        "of the adapter to the wrench: 0 straight ahead, 180 folded back", Units.Degree, 0, 180).Or("0 deg", "straight ahead");

    public static BenchNumber Number { get; } = new()
    {
        Name = "adapter",
        Says = "Torque wrench setting with an offset adapter",
        Room = "Torque",
        Formula = "TW = T · L / (L + E cos θ)",
        Source = "Statics of the lever; agrees with tool makers' manuals. At 90° no correction",
        Uncertainty = "Exact for the lever used: 10 % error in where the hand pulls moves the setting by about 1 % for an offset of a tenth of the lever.",
        Inputs = [Preload.Torque, Lever, Offset, Angle],
        Example = "torque=80Nm lever=40cm offset=5cm",
        Work = Work,
    };

    /// <summary>Setting in N·m. Lever more than 0 and more than −E cos θ.</summary>
    public static double SettingNewtonMetres(
        double torqueNewtonMetres, double leverMillimetres, double offsetMillimetres, double angleDegrees) =>
        torqueNewtonMetres * leverMillimetres / (leverMillimetres + offsetMillimetres * Math.Cos(angleDegrees * Math.PI / 180));

    private static Result<Outcome> Work(Given given)
    {
        var (lever, offset, angle) = (given.Of(Lever), given.Of(Offset), given.Of(Angle));
        return lever + offset * Math.Cos(angle * Math.PI / 180) > lever / 10
            ? Outcome.Of(
                new BenchValue("wrench setting", SettingNewtonMetres(given.Of(Preload.Torque), lever, offset, angle), Units.NewtonMetre))
            : Outcome.Refuse("offset", "folded back it leaves almost no lever", "Use a shorter adapter, or set it at 90°");
    }
}
