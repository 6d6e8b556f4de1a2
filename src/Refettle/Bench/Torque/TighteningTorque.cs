using Refettle.Bench.Threads;

namespace Refettle.Bench.Torque;

/// <summary>Torque for a share of the proof load.</summary>
public static class TighteningTorque
{
    private static readonly Input<double> Share = Inputs.Quantity("share", "share of the proof load", Units.Percent, 1, 100)
        .Or("75 %", "usual for joints that are taken apart again (Shigley; shop tables)");

    public static BenchNumber Number { get; } = new()
    {
        Name = "torque",
        Says = "Torque that loads a bolt to a share of its proof load",
        Room = "Torque",
        Formula = "T = K · d · share · As · Sp",
        Source = NutFactor.Source + "; " + FastenerClass.Source,
        Uncertainty = "As unsure as K: the range is what the scatter of a dry torque wrench asks for to reach the same load on every bolt. For soft threads, gaskets and hollow bolts it does not hold.",
        Inputs = [ThreadInputs.Thread, ThreadInputs.Class, NutFactor.Input, Share],
        Example = "thread=3/8-16 class=5 k=0.20",
        Work = Work,
    };

    private static Result<Outcome> Work(Given given)
    {
        var thread = given.Of(ThreadInputs.Thread);
        var grade = FastenerClass.Read("class", given.Of(ThreadInputs.Class), thread);
        if (!grade.IsGood)
            return Result<Outcome>.Bad(grade.Faults);
        var preload = Strength.LoadNewtons(thread, grade.Value.ProofMegapascals) * given.Of(Share) / 100;
        var torque = NutFactor.TorqueNewtonMetres(preload, given.Of(NutFactor.Input), thread.DiameterMillimetres);
        return Outcome.Of(new("torque", torque, Units.NewtonMetre), new("preload", preload, Units.Newton));
    }
}
