namespace Refettle;

/// <summary>How far a part is in its system.</summary>
/// <param name="Stage">The stage that is next, counted from 0; as many as there are stages when all are on.</param>
/// <param name="CoatsLeft">Coats of that stage that are still to go on; 0 when all stages are on.</param>
/// <param name="Over">For each stage that is over its last coat.</param>
/// <param name="Last">The last coat that belongs to the system; null when none was put on yet.</param>
/// <param name="Strange">Coats that the system does not have at their place.</param>
public sealed record PartProgress(
    string Part, CoatingSystem System, int Stage, int CoatsLeft, ValueList<AppliedCoat> Over, AppliedCoat? Last,
    ValueList<AppliedCoat> Strange)
{
    /// <summary>The times of its coats contradict its system, the order in which they were entered does not: that one counts.</summary>
    public bool IsAsEntered { get; init; }

    public bool IsDone => Stage == System.Stages.Count;

    /// <summary>The stages still to come, with the coats that each still takes.</summary>
    public IEnumerable<(int Stage, string Product, int Coats)> ToCome =>
        System.Stages.Select((stage, i) => (Stage: i, stage.Product, Coats: i == Stage ? CoatsLeft : stage.Coats))
            .Where(one => one.Stage >= Stage);

    /// <summary>All parts that have a system.</summary>
    public static ValueList<PartProgress> All(CarCoating coating) => coating.Parts
        .Select(chosen => coating.Of(chosen.Part) is { } system ? Of(coating, chosen.Part, system) : null).OfType<PartProgress>()
        .ToValueList();

    /// <summary>Coats count in the order of their time, or in that in which they were entered where only that one makes
    /// sense, as when a device's clock was off. One that is not of the stage that is next changes nothing and is told of.</summary>
    public static PartProgress Of(CarCoating coating, string part, CoatingSystem system)
    {
        var coats = coating.Applied.Where(coat => coat.Parts.Contains(part)).ToList();
        var byTime = Counted(part, system, coats.OrderBy(coat => coat.At));
        var asEntered = byTime.Strange.Count == 0 ? byTime : Counted(part, system, coats);
        return asEntered.Strange.Count < byTime.Strange.Count ? asEntered with { IsAsEntered = true } : byTime;
    }

    private static PartProgress Counted(string part, CoatingSystem system, IEnumerable<AppliedCoat> coats)
    {
        var (stage, left) = (0, system.Stages.Count == 0 ? 0 : system.Stages[0].Coats);
        AppliedCoat? last = null;
        var over = new List<AppliedCoat>();
        var strange = new List<AppliedCoat>();
        foreach (var coat in coats)
        {
            if (stage == system.Stages.Count || system.Stages[stage].Product != coat.Product)
            {
                strange.Add(coat);
                continue;
            }

            (last, left) = (coat, left - coat.Coats);
            if (left > 0)
                continue;
            over.Add(coat);
            (stage, left) = (stage + 1, stage + 1 < system.Stages.Count ? system.Stages[stage + 1].Coats : 0);
        }

        return new(part, system, stage, left, over.ToValueList(), last, strange.ToValueList());
    }
}
