namespace Refettle.Scope;

/// <summary>What explains an answer.</summary>
/// <param name="Costs">What each job takes given the rest.</param>
/// <param name="First">What goes first when time or money run short.</param>
public sealed record ScopeReasons(ValueList<JobCost> Costs, ValueList<DropFirst> First);

/// <summary>What a job takes on top of the others that are in: with it less without it, both at the proven least cost.</summary>
/// <param name="Takes">Time, money, and worth of the job and those that go along.</param>
/// <param name="Along">Other jobs that come or go with it.</param>
/// <param name="Since">The largest thing that is off for the others anyway; null when it shares nothing.</param>
public sealed record JobCost(string Job, bool IsIn, ScopeSum Takes, ValueList<string> Along, Fact? Since);

/// <summary>What can run short.</summary>
public enum ScopeLimit
{
    Time,
    Money,
    Day,
}

/// <summary>The best that can be done with a little less, proven.</summary>
/// <param name="Short">What runs short.</param>
/// <param name="Gone">Jobs that are then left out.</param>
/// <param name="Instead">Jobs that then come in.</param>
/// <param name="Loses">By how much the gain falls.</param>
/// <param name="Sum">What is then spent.</param>
public sealed record DropFirst(ScopeLimit Short, ValueList<string> Gone, ValueList<string> Instead, decimal Loses, ScopeSum Sum);

/// <summary>The best set of jobs for one limit of time or money: proven, none gains more.</summary>
/// <param name="Limit">Minutes or money.</param>
public sealed record FrontierPoint(decimal Limit, ValueList<string> Jobs, ScopeSum Sum, decimal Gain);

/// <summary>Whether a job fits beside those that are in.</summary>
/// <param name="Cost">What it takes on top.</param>
/// <param name="Breaches">The limits that it breaks, most telling first; empty when it fits.</param>
/// <param name="Room">Jobs that would have to go for it at least loss; null when nothing that may go makes room.</param>
public sealed record Brake(string Job, JobCost? Cost, ValueList<Breach> Breaches, ValueList<string>? Room);

/// <summary>A limit that is broken.</summary>
/// <param name="Limit">Which.</param>
/// <param name="Needed">Minutes, money or days that are needed.</param>
/// <param name="Given">Minutes, money or days that there are.</param>
public sealed record Breach(ScopeLimit Limit, decimal Needed, decimal Given);

/// <summary>Asks for a frontier.</summary>
public sealed record FrontierQuestion(ScopeQuestion Question, ScopeLimit Limit, int Points);

/// <summary>Asks whether a job fits.</summary>
/// <param name="Beside">The jobs that are in.</param>
public sealed record BrakeQuestion(ScopeQuestion Question, string Job, ValueList<string> Beside)
{
    /// <summary>The job as it would be entered; null for one that the car has.</summary>
    public Job? As { get; init; }

    /// <summary>The car with that job.</summary>
    public Car With(Car car) => As is null ? car : car with { Jobs = car.Jobs.Where(known => known.Id != As.Id).Append(As).ToValueList() };
}
