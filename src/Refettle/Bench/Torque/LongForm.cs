using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>Preload with thread and head friction apart, and friction back from a measured pair.</summary>
public static class LongForm
{
    private static readonly Input<double> ThreadFriction = Coefficient("thread-friction", "friction coefficient in the thread");
    private static readonly Input<double> HeadFriction = Coefficient("head-friction", "friction coefficient under the head");
    private static readonly Input<double> Load = Inputs.Quantity("preload", "measured clamp load", Units.Newton, 100, 2_000_000);

    public static BenchNumber Number { get; } = new()
    {
        Name = "preload-long",
        Says = "Clamp load with thread friction and head friction apart, by three forms",
        Room = "Torque",
        Formula = "exact: T = F [d2/2 · tan(φ + ρ′) + DKm/2 · μK]; linear: T = F (0.16 P + 0.58 d2 μG + DKm/2 μK); Motosh: T = F (P/2π + μG d2/(2 cos 30°) + μK DKm/2)",
        Source = "VDI 2230 (Kellermann and Klein); Motosh from memory",
        Uncertainty = "The three forms agree within 1 %; the friction coefficients are good to a quarter at best.",
        Inputs = [Preload.Torque, ThreadInputs.Thread, ThreadFriction, HeadFriction, HeadBearing.Input],
        Example = "torque=48Nm thread=M10 thread-friction=0.14 head-friction=0.14",
        Work = Work,
    };

    public static BenchNumber Inverse { get; } = new()
    {
        Name = "friction",
        Says = "Total friction coefficient from a measured torque and clamp load",
        Room = "Torque",
        Formula = "μ = (T/F − P/2π) / (0.577 d2 + 0.5 DKm)",
        Source = "ISO 16047, formula from memory",
        Uncertainty = "As good as the load measurement.",
        Inputs = [Preload.Torque, Load, ThreadInputs.Thread, HeadBearing.Input],
        Example = "torque=50Nm preload=26.1kN thread=M10",
        Work = WorkInverse,
    };

    private static Input<double> Coefficient(string name, string says) => Inputs.Quantity(name, says, Units.One, 0.02, 0.5);

    private static Result<Outcome> Work(Given given)
    {
        var (thread, torque) = (given.Of(ThreadInputs.Thread), given.Of(Preload.Torque));
        var bearing = HeadBearing.Of(given, thread);
        if (!bearing.IsGood)
            return Result<Outcome>.Bad(bearing.Faults);
        var (inThread, atHead) = (given.Of(ThreadFriction), given.Of(HeadFriction));
        BenchValue Value(string form, double factor) =>
            new("preload, " + form, NutFactor.PreloadNewtons(torque, factor, thread.DiameterMillimetres), Units.Newton);
        var exact = Friction.ExactNutFactor(thread, inThread, atHead, bearing.Value);
        return Outcome.Of(
            Value("exact form", exact),
            Value("linear form", Friction.LinearNutFactor(thread, inThread, atHead, bearing.Value)),
            Value("Motosh", Friction.MotoshNutFactor(thread, inThread, atHead, bearing.Value)),
            new("nut factor K", exact, Units.One));
    }

    private static Result<Outcome> WorkInverse(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var bearing = HeadBearing.Of(given, thread);
        if (!bearing.IsGood)
            return Result<Outcome>.Bad(bearing.Faults);
        var friction = Friction.TotalFriction(thread, given.Of(Preload.Torque), given.Of(Load), bearing.Value);
        return friction < 0
            ? Outcome.Refuse("preload", "this torque cannot give so much load even without friction", "Check units and readings")
            : Outcome.Of(
                new("total friction", friction, Units.One),
                new("nut factor K", given.Of(Preload.Torque) * 1000 / (thread.DiameterMillimetres * given.Of(Load)), Units.One));
    }
}
