namespace Refettle;

/// <summary>What a joint that is being freed has become. A later value is worse than an earlier one, but for <see cref="Freed"/>.</summary>
public enum JointCondition
{
    Sound,

    /// <summary>The head or nut gives no hold any more.</summary>
    Rounded,

    /// <summary>The bolt turns together with the bush sleeve it has rusted into.</summary>
    TurnsWithSleeve,

    /// <summary>Broken off with a stub to grip.</summary>
    SnappedProud,

    /// <summary>Broken off level with the surface, or below.</summary>
    SnappedFlush,

    /// <summary>Out, but the thread in the part is gone.</summary>
    ThreadGone,

    /// <summary>Undone, and the thread is good.</summary>
    Freed,
}

/// <summary>One attempt at a joint.</summary>
/// <param name="Joint">The joint's identifier.</param>
/// <param name="Rung">The rung of the ladder that was tried.</param>
/// <param name="Becomes">What the joint is afterwards; null when it held as before.</param>
/// <param name="IsSoaked">Whether it had soaked before the try.</param>
/// <param name="Took">Minutes it took; null when not timed.</param>
public sealed record Try(string Joint, string Rung, JointCondition? Becomes, bool IsSoaked, Minutes? Took);
