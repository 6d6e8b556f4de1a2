namespace Refettle.Checks;

/// <summary>Circular support: facts that wait for each other so that no order brings them about, although nothing forbids them.</summary>
internal static class CircleCheck
{
    private const int MostCircles = 50;

    private const string Apart = "Correct a clear list, or describe another way for one of them";

    private const string Together =
        "Correct what a refit way asks for (its clear), or leave that way out: then it goes back as it came off";

    /// <summary>Reports a smallest circle of each group that waits for nothing but itself, takes it for broken, and looks again.</summary>
    public static void Run(Structure structure, Names names, FaultBook book)
    {
        if (Look(new(structure, names), names, book, "", Apart) && Backwards.Of(structure) is var back && !ReferenceEquals(back, structure))
            Look(new(back, names), names, book, " on the way back together", Together);
    }

    /// <summary>False when there were any.</summary>
    private static bool Look(SupportGraph graph, Names names, FaultBook book, string when, string mend)
    {
        var stuck = graph.Underivable();
        var isClean = stuck.Length == 0;
        for (var reported = 0; stuck.Length > 0; stuck = graph.Underivable())
        {
            foreach (var group in StuckGroups.Of(graph, stuck))
            {
                if (reported++ == MostCircles)
                {
                    Rest(stuck.Length, book);
                    return false;
                }

                Report(graph, StuckGroups.SmallestCircle(graph, group), names, book, when, mend);
            }
        }

        return isClean;
    }

    private static void Report(SupportGraph graph, List<int> circle, Names names, FaultBook book, string when, string mend)
    {
        var facts = circle.Select(fact => graph[fact]).ToArray();
        var waits = facts.Select((fact, i) => $"{fact} waits for {facts[(i + 1) % facts.Length]}");
        book.Error(Place(facts[0], names), "", $"circular support that no way can break{when}: {string.Join(", ", waits)}", mend);
        foreach (var fact in circle)
            graph.Grant(fact);
    }

    private static void Rest(int count, FaultBook book) =>
        book.Error("car", "", $"{count} more facts wait in circles", "Mend the circles above first, then check again");

    private static string Place(Fact fact, Names names) => fact.Kind switch
    {
        FactKind.Open => $"joint {fact.Subject}",
        FactKind.State => $"state {fact.Subject}",
        FactKind.Reach => $"space {fact.Subject}",
        FactKind.Off when names.SubAssemblies.ContainsKey(fact.Subject) => $"sub-assembly {fact.Subject}",
        _ => $"part {fact.Subject}",
    };
}
