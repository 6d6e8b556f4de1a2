namespace Refettle.Bench.Threads;

/// <summary>What a bolt of a property class or grade must withstand. Stresses in MPa.</summary>
/// <param name="Name"><c>8.8</c>, or an SAE grade as <c>SAE 5</c>.</param>
/// <param name="ProofMegapascals">Stress it takes without lasting stretch (Sp).</param>
/// <param name="YieldMegapascals">Rp0.2 or yield strength.</param>
/// <param name="UltimateMegapascals">Tensile strength (Rm).</param>
/// <param name="LeastTemperingCelsius">Heated beyond this it can no longer be credited with its class.</param>
/// <param name="MostVickers">Hardest it may be, HV; null where the source gives another scale.</param>
public sealed record FastenerClass(
    string Name, double ProofMegapascals, double YieldMegapascals, double UltimateMegapascals, double LeastTemperingCelsius,
    int? MostVickers)
{
    public const string Source = "ISO 898-1 tables 2 and 3; SAE J429 (seen in published copies)";

    private const double KsiInMegapascals = 4448.2216152605 / 645.16;

    public static ValueList<string> Names { get; } = ["8.8", "10.9", "12.9", "SAE 5", "SAE 8"];

    /// <summary>Reads a class for a thread: metric classes go with metric threads, SAE grades with inch threads.</summary>
    public static Result<FastenerClass> Read(string place, string name, ScrewThread thread)
    {
        var isInch = name.StartsWith("SAE", StringComparison.Ordinal);
        if (isInch != (thread.System == ThreadSystem.Unified))
            return Bad(place, $"{name} does not go with {thread}", "Metric threads have 8.8, 10.9 or 12.9; inch threads SAE 5 or SAE 8");
        return For(name, thread.DiameterMillimetres) is { } found
            ? Result<FastenerClass>.Good(found)
            : Bad(place, $"{name} is not defined for {thread}", "Its table covers 1/4 in and larger");
    }

    private static FastenerClass? For(string name, double diameterMillimetres) => name switch
    {
        "8.8" => diameterMillimetres <= 16 ? new(name, 580, 640, 800, 425, 320) : new(name, 600, 660, 830, 425, 335),
        "10.9" => new(name, 830, 940, 1040, 425, 380),
        "12.9" => new(name, 970, 1100, 1220, 380, 435),
        "SAE 5" when diameterMillimetres is >= 6.35 and <= 25.4 => Sae(name, 85, 92, 120),
        "SAE 8" when diameterMillimetres is >= 6.35 and <= 38.1 => Sae(name, 120, 130, 150),
        _ => null,
    };

    private static FastenerClass Sae(string name, double proofKsi, double yieldKsi, double ultimateKsi) =>
        new(name, proofKsi * KsiInMegapascals, yieldKsi * KsiInMegapascals, ultimateKsi * KsiInMegapascals, 427, null);

    private static Result<FastenerClass> Bad(string place, string found, string mend) =>
        Result<FastenerClass>.Bad(new Fault(place, found, mend));
}
