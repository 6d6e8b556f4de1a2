namespace Refettle.Access.Derivation;

/// <summary>Reduces a problem with an eye on its limits, solves it without them, and where that does not
/// keep them, hands on what is left.</summary>
/// <param name="free">Solves problems without limits.</param>
/// <param name="forCores">Solves what is left.</param>
public sealed class ReducedLimitedSolver(IDerivationSolver free, ILimitedSolver forCores) : ILimitedSolver
{
    public DerivationAnswer Solve(LimitedProblem limited, CancellationToken cancel = default) =>
        LimitedCore.Of(limited, free, forCores, cancel)?.Solve(cancel) ?? DerivationAnswer.Impossible;

    public double[]? Prices(LimitedProblem limited) => forCores.Prices(limited);
}
