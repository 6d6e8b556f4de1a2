namespace Refettle.Bench;

/// <summary>A figure that can be worked out at the bench: what it needs, how, after whom, and how sure it is.</summary>
public sealed record BenchNumber
{
    /// <summary>The word it is asked for by: <c>preload</c>.</summary>
    public required string Name { get; init; }

    /// <summary>What it tells, in words.</summary>
    public required string Says { get; init; }

    /// <summary>The folder it belongs to: <c>Torque</c>.</summary>
    public required string Room { get; init; }

    public required string Formula { get; init; }

    public required string Source { get; init; }

    /// <summary>How far to trust it, in words.</summary>
    public required string Uncertainty { get; init; }

    public required ValueList<Input> Inputs { get; init; }

    /// <summary>A question that works, as <c>key=value</c> texts.</summary>
    public required string Example { get; init; }

    /// <summary>Works it out from inputs that have been read. Faults are for inputs that do not fit together.</summary>
    public required Func<Given, Result<Outcome>> Work { get; init; }

    /// <summary>Reads the inputs and works the number out.</summary>
    /// <param name="texts">Input name → text as written: <c>torque</c> → <c>48 N·m</c>. Case of names does not matter.</param>
    /// <returns>The answer, or every fault: unknown names, missing inputs, wrong units, values outside their range.</returns>
    public Result<BenchAnswer> Answer(IReadOnlyDictionary<string, string> texts)
    {
        var asked = new Dictionary<string, string>(texts.Count, StringComparer.OrdinalIgnoreCase);
        var faults = new List<Fault>();
        foreach (var (name, text) in texts)
        {
            if (Inputs.Any(input => input.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
                asked[name] = text;
            else
                faults.Add(new(Name, $"'{name}' is not one of its inputs",
                    NearNames.Ask(name, Inputs.Select(input => input.Name),
                        "It takes: " + string.Join(", ", Inputs.Select(input => input.Name)))));
        }

        var given = new Given();
        foreach (var input in Inputs)
            faults.AddRange(Read(input, asked, given));
        return faults.Count > 0 ? Result<BenchAnswer>.Bad(faults) : Finish(Work(given), asked);
    }

    private static ValueList<Fault> Read(Input input, Dictionary<string, string> asked, Given given) =>
        (asked.GetValueOrDefault(input.Name) ?? input.Default) is { } text ? input.Read(text, given)
        : input.IsOptional ? []
        : [new(input.Name, "it is missing", $"Give {input.Name}: {input.Says} ({input.Accepts})")];

    private Result<BenchAnswer> Finish(Result<Outcome> outcome, Dictionary<string, string> asked) => outcome.IsGood
        ? Result<BenchAnswer>.Good(new()
        {
            Number = Name,
            Says = Says,
            Values = outcome.Value.Values,
            Verdict = outcome.Value.Verdict,
            Inputs = Inputs.Where(input => asked.ContainsKey(input.Name) || input.Default is not null)
                .Select(input => Understand(input, asked)).ToValueList(),
            Formula = Formula,
            Source = Source,
            Uncertainty = Uncertainty,
            Cautions = outcome.Value.Cautions,
        })
        : Result<BenchAnswer>.Bad(outcome.Faults);

    private static Understood Understand(Input input, Dictionary<string, string> asked) => asked.TryGetValue(input.Name, out var text)
        ? new(input.Name, text, null)
        : new(input.Name, input.Default!, input.DefaultOrigin);
}
