namespace Refettle.Cli;

/// <summary>How the command ended, told to whoever called it. Documented in docs/cli.md.</summary>
internal enum ExitCode
{
    Good = 0,

    /// <summary>What was given has faults; nothing was changed.</summary>
    Faults = 1,

    /// <summary>The command line itself was not understood.</summary>
    Usage = 2,

    /// <summary>No plan reaches the goals.</summary>
    Impossible = 3,

    /// <summary>The store could not be opened, read or written.</summary>
    Store = 4,

    /// <summary>A mistake in the program.</summary>
    Bug = 70,

    /// <summary>Ctrl-C; what was found until then has been shown.</summary>
    Interrupted = 130,
}
