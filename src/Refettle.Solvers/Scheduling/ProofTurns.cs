namespace Refettle.Solvers.Scheduling;

/// <summary>How long each worker but the first does what before it does the other.</summary>
/// <param name="SecondsOfSearch">Near schedules as good as the best.</param>
/// <param name="SecondsOfBreeding">For more of them.</param>
/// <param name="AreEarly">The best still falls from moment to moment, and who is ahead keeps ahead of it; later a proof under way
/// counts for more.</param>
internal readonly record struct ProofTurns(double SecondsOfSearch, double SecondsOfBreeding, bool AreEarly = false)
{
    public static readonly ProofTurns Searching = new(1, 0, AreEarly: true);

    public static readonly ProofTurns Breeding = new(0, 1, AreEarly: true);

    public static readonly ProofTurns Lasting = new(0.3, 0.05);
}
