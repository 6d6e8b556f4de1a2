using Refettle.Bench.Alignment;
using Refettle.Bench.Chance;
using Refettle.Bench.Coating;
using Refettle.Bench.Engagement;
using Refettle.Bench.Heat;
using Refettle.Bench.Limits;
using Refettle.Bench.Springs;
using Refettle.Bench.Threads;
using Refettle.Bench.Torque;

namespace Refettle.Bench;

/// <summary>The catalogue of all bench numbers, by room.</summary>
public static class BenchNumbers
{
    public static ValueList<BenchNumber> All { get; } =
    [
        Geometry.Number, Strength.Number,
        Preload.Number, TighteningTorque.Number, LubricantSwap.Number, NutFactor.Number, Scatter.Number, PreloadLimits.Number,
        PreloadTest.Number,
        LongForm.Number, LongForm.Inverse, AssemblyPreload.Number, TorqueAngle.Number, RunningTorque.Number, Adapter.Number,
        WrenchRange.Number,
        ThreadEngagement.Number,
        Tempering.Number, BreakingTorque.Number, InsertNut.Number, HydrogenRisk.Number, HeatGap.Number,
        Film.WetFilm, Film.DryFilm, Film.Coverage, Film.Quantity, DewPoint.Number, DewPoint.FromWetBulb, SurfaceMargin.Number,
        Cure.Number, RecoatWindow.Number, FilmAcceptance.Number,
        Conformity.Number, LimitDecision.Number,
        CoilSpring.RateNumber, CoilSpring.LostNumber, CoilSpring.EnergyNumber, Wheel.RateNumber, Wheel.FrequencyNumber,
        Toe.ToAngle, Toe.ToLength, Thrust.Number, Steering.Caster, Steering.Included, Steering.Setback, Wishbone.Number,
        Wishbone.TravelNumber,
        ChanceNumbers.Belief, ChanceNumbers.Pert, ChanceNumbers.Skewed, ChanceNumbers.Spares,
        Conversion.Number,
    ];

    /// <summary>The number of that name, or null. Case does not matter.</summary>
    public static BenchNumber? Find(string name) =>
        All.FirstOrDefault(number => number.Name.Equals(name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Works out a number from <c>key=value</c> texts.</summary>
    public static Result<BenchAnswer> Answer(string name, IEnumerable<string> pairs)
    {
        if (Find(name) is not { } number)
            return Result<BenchAnswer>.Bad(new Fault("numbers", $"there is no number '{name}'",
                NearNames.Ask(name, All.Select(known => known.Name), "There are: " + string.Join(", ", All.Select(known => known.Name)))));
        var texts = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var faults = pairs.Select(pair => Add(pair, texts)).OfType<Fault>().ToList();
        return faults.Count > 0 ? Result<BenchAnswer>.Bad(faults) : number.Answer(texts);
    }

    private static Fault? Add(string pair, Dictionary<string, string> texts)
    {
        var cut = pair.IndexOf('=');
        if (cut <= 0 || cut == pair.Length - 1)
            return new(pair, "it is not written key=value", "Write for example torque=48Nm");
        return texts.TryAdd(pair[..cut].Trim(), pair[(cut + 1)..].Trim()) ? null : new(pair[..cut], "it is given twice", "Give it once");
    }
}
