using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What is done by the log although something that it needs was not by then: of a wheel that is off nobody may have said so of its cap. How that goes together no rule
/// tells: it is done as well as it can be, and where it cannot, the marks are told.</summary>
internal sealed class OddMarks(CarStanding standing)
{
    private readonly IReadOnlyDictionary<Fact, ValueList<Fact>> _unmet = StepsDone.Unmet(standing);

    public bool Have(Step step) => _unmet.ContainsKey(step.Fact);

    public ValueList<Fault> Faults() => _unmet.Select(one => new Fault(one.Key.ToString(), $"it is done by the log, and {string.Join(", ", one.Value)} was not by then",
        "Mark that too if it was done, else take the mark back: refettle done, refettle back.")).ToValueList();
}
