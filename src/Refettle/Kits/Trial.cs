using Refettle.Logbook;

namespace Refettle.Kits;

/// <summary>Whether an addition leaves the car without new faults.</summary>
internal static class Trial
{
    /// <summary>The addition with its notes, or every fault that the car has with it and had not without it.</summary>
    public static Result<StructureAdded> Of(Structure car, StructureAdded addition)
    {
        var faults = AdditionCheck.Of(car, addition).ToArray();
        return faults.Any(fault => fault.Severity == Severity.Error)
            ? Result<StructureAdded>.Bad(faults)
            : Result<StructureAdded>.Good(addition, faults);
    }
}
