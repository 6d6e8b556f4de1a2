namespace Refettle.Scope;

/// <summary>Answers which jobs are worth doing.</summary>
/// <remarks>All methods want a question without faults (<see cref="ScopeQuestionCheck"/>). A cancelled token gives the best answer so
/// far, with its bound.</remarks>
public interface IScopePlanner
{
    /// <summary>The set of jobs of greatest gain within the limits, all musts in it.</summary>
    ScopeAnswer Choose(Car car, ScopeQuestion question, CancellationToken cancel = default);

    /// <summary>What each job takes given the rest, and what is dropped first.</summary>
    ScopeReasons Explain(Car car, ScopeAnswer answer, CancellationToken cancel = default);

    /// <summary>The greatest gain for limits of time, or of money, from the musts alone to all that is
    /// worth it; the other limits stay.</summary>
    /// <param name="most">So many points, 2 or more.</param>
    /// <param name="found">Told of each point as it is found.</param>
    ValueList<FrontierPoint> Frontier(
        Car car, ScopeQuestion question, ScopeLimit limit, int most = 20, IProgress<FrontierPoint>? found = null,
        CancellationToken cancel = default);

    /// <summary>Whether a job of the car fits beside those that are in.</summary>
    /// <param name="beside">Those that are in; null takes the chosen scope, or where nothing is chosen the best.</param>
    Brake Add(Car car, ScopeQuestion question, string job, ValueList<string>? beside = null, CancellationToken cancel = default);
}
