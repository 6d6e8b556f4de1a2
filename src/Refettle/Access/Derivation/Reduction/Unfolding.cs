namespace Refettle.Access.Derivation.Reduction;

/// <summary>Reads the solution of a reduced problem back.</summary>
internal static class Unfolding
{
    /// <param name="problem">The problem before any reduction.</param>
    /// <param name="chosen">Its ways that the solution stands for.</param>
    /// <param name="slack">By how much the solution may be above the least cost.</param>
    public static DerivationAnswer Of(DerivationProblem problem, IEnumerable<int> chosen, long slack)
    {
        var wayOf = new int[problem.FactCount];
        Array.Fill(wayOf, -1);
        foreach (var way in chosen)
            wayOf[problem.FactOf[way]] = way;
        var supported = Closure.Supported(problem, wayOf)
            ?? throw new InvalidOperationException("The solutions of the parts do not support each other.");
        var isUsed = new bool[problem.FactCount];
        foreach (var fact in supported)
            isUsed[fact] = true;
        var cost = supported.Sum(fact => problem.Cost[wayOf[fact]]);
        for (var fact = 0; fact < wayOf.Length; fact++)
        {
            if (!isUsed[fact])
                wayOf[fact] = -1;
        }

        return new(wayOf, cost, cost - slack);
    }
}
