using Refettle.Access.Derivation;

namespace Refettle.Solvers.Tests;

/// <summary>The solvers that are held against every outside value here.</summary>
public static class UnderTest
{
    public const string Reduced = "reduced";
    public const string MixedInteger = "mixed-integer";

    public static IReadOnlyList<string> Names { get; } = [Reduced, MixedInteger];

    public static IDerivationSolver Make(string name = Reduced) => name switch
    {
        Reduced => new ReducedSolver(new MixedIntegerSolver()),
        MixedInteger => new MixedIntegerSolver(),
        _ => throw new ArgumentException($"There is no solver '{name}'."),
    };
}
