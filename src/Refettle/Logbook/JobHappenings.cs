namespace Refettle.Logbook;

/// <summary>A job is thought of, or thought of otherwise: one with the same identifier is replaced. <c>job-entered</c></summary>
public sealed record JobEntered(Job Job) : Happening;

/// <summary>A job is given up. <c>job-dropped</c></summary>
public sealed record JobDropped(string Job, string? Why) : Happening;

/// <summary>A job is done. <c>job-done</c></summary>
/// <param name="Took">Minutes of its own work, without opening and closing; null when not timed.</param>
public sealed record JobDone(string Job, Minutes? Took) : Happening;

/// <summary>What the owner has to spend. <c>means-set</c></summary>
public sealed record MeansSet(Means Means) : Happening;

/// <summary>The jobs that the owner chose to do; those that must be done need no naming. <c>scope-chosen</c></summary>
public sealed record ScopeChosen(ValueList<string> Jobs) : Happening;
