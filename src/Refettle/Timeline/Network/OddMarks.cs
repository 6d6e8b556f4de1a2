using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What is done by the log although something that it needs was not by then: of a wheel that is off
/// nobody may have said so of its cap.</summary>
internal sealed class OddMarks(IReadOnlyDictionary<Fact, ValueList<Fact>> unmet)
{
    public bool Have(Step step) => unmet.ContainsKey(step.Fact);

    public ValueList<Fault> Faults() =>
        unmet.Select(one => new Fault(one.Key.ToString(), $"it is done by the log, and {string.Join(", ", one.Value)} was not by then",
        "Mark that too if it was done, else take the mark back: refettle done, refettle back.")).ToValueList();
}
