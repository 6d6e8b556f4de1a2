namespace Refettle.Timeline.Network;

/// <summary>A task waits for another: it starts from <paramref name="Least"/> to
/// <paramref name="Most"/> minutes on the wall clock after the other's finish.</summary>
/// <param name="Why">In words; empty where it is a plain need.</param>
public sealed record TaskLink(string Before, string After, int Least = 0, int? Most = null, string Why = "");

/// <summary>All tasks, each after those it needs, and what waits for what.</summary>
/// <param name="Notes">What could not be planned, and what was assumed.</param>
public sealed record TaskNetwork(ValueList<WorkTask> Tasks, ValueList<TaskLink> Links, ValueList<Fault> Notes);
