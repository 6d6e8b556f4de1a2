namespace Refettle.Access;

/// <summary>What a fault of a plan is about.</summary>
internal enum PlanFaultKind
{
    /// <summary>A step is not possible where it stands, or a goal is missed.</summary>
    Order,

    /// <summary>Flame, sparks or a cut while something near still burns.</summary>
    Fire,

    /// <summary>A step's minutes are not the sheet's.</summary>
    Minutes,

    /// <summary>The sum or the bound.</summary>
    Sum,
}

/// <summary>A fault of a plan.</summary>
internal readonly record struct PlanFault(PlanFaultKind Kind, Fault Fault);
