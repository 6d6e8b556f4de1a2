namespace Refettle.Peers.Cars;

/// <summary>How a generated car hangs together.</summary>
public enum CarKind
{
    /// <summary>Zones and corners; what is in the way of a part lies mostly in the same zone and always further out.</summary>
    Realistic,

    /// <summary>Realistic, but a tenth of what is in the way lies further in, so that facts can seem to
    /// support each other in circles.</summary>
    Tangled,

    /// <summary>No zones: anything further out may be in the way of anything, with more ways for each joint.</summary>
    Dense,
}

/// <summary>What to generate. Equal shapes give equal cars.</summary>
/// <param name="Parts">How many parts besides the body shell, 20 or more.</param>
public sealed record CarShape(CarKind Kind, int Parts, int Seed)
{
    /// <summary>Parts in a zone.</summary>
    public int ZoneSize => Kind == CarKind.Dense ? Parts : 25;

    public int Zones => (Parts + ZoneSize - 1) / ZoneSize;

    /// <summary>How many places further out or in something in the way may lie, in its zone.</summary>
    public int Near => Kind == CarKind.Dense ? Parts : 8;

    /// <summary>How strongly few things in the way are preferred to many: 1 makes all numbers as likely.</summary>
    public double Sparsity => Kind == CarKind.Dense ? 1 : 2;

    /// <summary>The chance that a joint has several ways.</summary>
    public double SeveralWays => Kind == CarKind.Dense ? 0.6 : 0.3;

    /// <summary>The chance that something in the way lies further in.</summary>
    public double Inward => Kind == CarKind.Tangled ? 0.1 : 0;

    /// <summary>The chance that something in the way lies in another zone.</summary>
    public const double Elsewhere = 0.08;
}
