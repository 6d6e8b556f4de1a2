using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>The ring under the head that rubs: DKm, the mean of bearing and hole diameter.</summary>
/// <remarks>Sizes from memory: bearing face of ISO 4014 hexagon heads at its least, hole of ISO 273 medium.</remarks>
public static class HeadBearing
{
    private static readonly (double Diameter, double Face, double Hole)[] Sizes =
        [(6, 8.88, 6.6), (8, 11.63, 9), (10, 14.63, 11), (12, 16.63, 13.5), (14, 19.64, 15.5), (16, 22.49, 17.5)];

    public static Input<double> Input { get; } = Inputs
        .Quantity("bearing",
            "mean friction diameter under the head, (face + hole)/2; M6 to M16 hexagon heads have one built in, from memory of ISO 4014 and ISO 273", Units.Millimetre, 3, 100)
        .Optional();

    /// <summary>DKm in mm for a hexagon head on a medium hole; null beyond M6 to M16.</summary>
    public static double? MeanDiameterMillimetres(ScrewThread thread) =>
        thread.System == ThreadSystem.Metric && Array.Find(Sizes, row => row.Diameter == thread.DiameterMillimetres) is { Face: > 0 } row
            ? (row.Face + row.Hole) / 2
            : null;

    /// <summary>The diameter given, or the built-in one.</summary>
    internal static Result<double> Of(Given given, ScrewThread thread) =>
        (given.Maybe(Input) ?? MeanDiameterMillimetres(thread)) is { } mean
            ? mean > thread.DiameterMillimetres / 2
                ? Result<double>.Good(mean)
                : Result<double>.Bad(
                    new Fault("bearing", $"{new Measure(mean, Units.Millimetre)} is inside the bolt", $"Give more than half of {thread}"))
            : Result<double>.Bad(new Fault("bearing", $"none is built in for {thread}",
                "Give bearing: half the sum of the head's face and hole diameter, in mm"));
}
