using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Solvers;
using Refettle.Storage;
using Refettle.Timeline.Scheduling;

namespace Refettle.Cli;

/// <summary>The world outside the command: streams, clock, folders. Tests bring their own.</summary>
internal sealed record Surroundings
{
    public const string StoreVariable = "REFETTLE_STORE";
    public const string DetailVariable = "REFETTLE_TRACE";

    public required TextWriter Out { get; init; }

    public required TextWriter Error { get; init; }

    /// <summary>Whether a person who likes colours watches the output.</summary>
    public bool InColour { get; init; }

    /// <summary>Whether a person watches the error stream, so that a line may move.</summary>
    public bool IsWatched { get; init; }

    /// <summary>Columns of the terminal.</summary>
    public int Width { get; init; } = 100;

    /// <summary>Whether a mistake in the program is shown with its stack.</summary>
    public bool InDetail { get; init; }

    public required TimeProvider Clock { get; init; }

    /// <summary>Makes the planner when the first question is asked: its native library takes time to load.</summary>
    public required Func<IAccessPlanner> Planner { get; init; }

    /// <summary>Makes the planner of the scope when it is first asked.</summary>
    public Func<IScopePlanner> Scoper { get; init; } =
        () => new ScopePlanner(new ReducedSolver(new MixedIntegerSolver()), new MixedIntegerSolver());

    /// <summary>Makes the scheduler when the first timeline is asked for.</summary>
    public Func<IScheduler> Scheduler { get; init; } = () => new FirstScheduler();

    /// <summary>Opens the store at a path, making it when there is none.</summary>
    public required Func<string, Result<IGarageStore>> OpenLogbook { get; init; }

    /// <summary>The store when <c>--store</c> does not say.</summary>
    public required string Store { get; init; }

    /// <summary>The folder that holds <c>kits</c> and <c>samples</c>.</summary>
    public required string Content { get; init; }

    /// <summary>Ctrl-C.</summary>
    public CancellationToken Interrupt { get; init; }
}
