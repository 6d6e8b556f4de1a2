using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli;

/// <summary>What a verb answers: for a person, and for a program.</summary>
/// <param name="Shown">For the terminal.</param>
/// <param name="Data">For <c>--json</c>; its shape is documented in docs/cli.md.</param>
internal sealed record Reply(IRenderable Shown, object Data)
{
    public ExitCode Code { get; init; } = ExitCode.Good;

    /// <summary>What is wrong, or worth knowing; told on the error stream.</summary>
    public ValueList<Fault> Faults { get; init; } = [];

    public Reply With(IReadOnlyCollection<Fault> notes) => notes.Count == 0 ? this : this with { Faults = [.. notes, .. Faults] };

    /// <summary>One sentence, and the same facts as data.</summary>
    public static Reply Said(string sentence, object data) => new(new Text(sentence), data);

    /// <summary>Nothing but faults.</summary>
    public static Reply Bad(IEnumerable<Fault> faults, ExitCode code = ExitCode.Faults)
    {
        var all = faults.ToValueList();
        return new(Text.Empty, new { faults = all }) { Code = code, Faults = all };
    }

    /// <summary>The reply to a good result, its notes passed on; or its faults.</summary>
    public static Reply To<T>(Result<T> result, Func<T, Reply> reply) =>
        result.IsGood ? reply(result.Value).With(result.Faults) : Bad(result.Faults);
}
