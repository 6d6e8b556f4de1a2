using Refettle.Bench.Threads;
using Refettle.Bench.Torque;

namespace Refettle.CloseUp;

/// <summary>A general range of torque for a joint without a figure. It says that it is one.</summary>
/// <param name="Low">For a lubricated thread, K 0.15.</param>
/// <param name="High">For a dry thread, K 0.20.</param>
public sealed record GeneralTorque(NewtonMetres Low, NewtonMetres High)
{
    /// <summary>Stands beside every general range.</summary>
    public const string Says =
        "No figure from the maker is known. This is a general range: 75 % of the bolt's proof load, nut factor 0.15 to 0.20. It holds for steel in steel; soft threads, gaskets and hollow bolts take less.";

    /// <summary>The range for a joint's thread and grade.</summary>
    /// <returns>Faults when it has no thread or grade, or one that is not known.</returns>
    public static Result<GeneralTorque> Of(Joint joint)
    {
        var place = $"joint {joint.Id}";
        if (joint.Thread is null || joint.Grade is null)
            return Result<GeneralTorque>.Bad(
                new Fault(place, "it has no thread or no grade", "Read both off the bolt: thread=M10x1.25 grade=8.8"));
        var thread = ScrewThread.Read(place, joint.Thread);
        if (!thread.IsGood)
            return Result<GeneralTorque>.Bad(thread.Faults);
        var grade = FastenerClass.Read(place, joint.Grade, thread.Value);
        return grade.IsGood ? Result<GeneralTorque>.Good(new(At(0.15), At(0.20))) : Result<GeneralTorque>.Bad(grade.Faults);

        NewtonMetres At(double nutFactor) => new(Math.Round((decimal)NutFactor.TorqueNewtonMetres(
            0.75 * Strength.LoadNewtons(thread.Value, grade.Value.ProofMegapascals), nutFactor, thread.Value.DiameterMillimetres), 1));
    }
}
