namespace Refettle;

/// <summary>What work can set alight or melt.</summary>
[Flags]
public enum Danger
{
    None = 0,

    /// <summary>Heat without flame (induction): rubber, plastic and grease near it suffer.</summary>
    Heat = 1,

    Flame = 2,

    Spark = 4,

    /// <summary>Cutting by machine: sparks, and whatever lies behind. A blade driven by hand (hacksaw, knife, snips) is none.</summary>
    Cutting = 8,

    /// <summary>The dangers that need fuel, brake fluid and airbags out of the way.</summary>
    Fire = Flame | Spark | Cutting,
}
