using Refettle.Checks;
using Refettle.Logbook;

namespace Refettle.Kits;

/// <summary>Whether an addition leaves the car without new faults.</summary>
internal static class AdditionCheck
{
    /// <summary>The addition, or every error that the car has with it and had not without it.</summary>
    public static Result<StructureAdded> Of(Structure car, StructureAdded addition)
    {
        var faults = StructureCheck.Of(car.With(addition.Added, addition.Tied)).Except(StructureCheck.Of(car)).ToArray();
        return faults.Any(fault => fault.Severity == Severity.Error)
            ? Result<StructureAdded>.Bad(faults)
            : Result<StructureAdded>.Good(addition, faults);
    }
}
