namespace Refettle.Checks;

/// <summary>The facts of clear lists.</summary>
internal static class FactCheck
{
    public static void Run(string place, string path, ValueList<Fact> clear, Names names, FaultBook book)
    {
        for (var i = 0; i < clear.Count; i++)
            One(place, $"{path}[{i}]", clear[i], names, book);
        Stances(place, path, clear, names, book);
    }

    private static void One(string place, string path, Fact fact, Names names, FaultBook book)
    {
        if (!names.Knows(fact))
            Unknown(place, path, fact, names, book);
        else if (fact.Kind is FactKind.Off or FactKind.Free && names.IsFixed(fact.Subject))
            book.Error(place, path, $"{fact} is asked for, but part {fact.Subject} is fixed and never comes off",
                "Leave the condition out, or describe the part as not fixed");
        else if (fact.Kind == FactKind.Off && names.IsFixedUnit(fact.Subject))
            book.Error(place, path, $"{fact} is asked for, but a member of {fact.Subject} is fixed", "Leave the condition out");
    }

    private static void Unknown(string place, string path, Fact fact, Names names, FaultBook book)
    {
        foreach (var kind in Enum.GetValues<FactKind>())
        {
            if (!names.Knows(new(kind, fact.Subject)))
                continue;
            book.Error(place, path, $"{fact}: {fact.Subject} is {Thing(kind)}", $"Write {new Fact(kind, fact.Subject)}");
            return;
        }

        var (wanted, known) = Wanted(fact.Kind, names);
        book.Unknown(place, path, fact.Subject, wanted, known);
    }

    private static (string, IEnumerable<string>) Wanted(FactKind kind, Names names) => kind switch
    {
        FactKind.Off => ("a part or sub-assembly", names.Parts.Keys.Concat(names.SubAssemblies.Keys)),
        FactKind.Free => ("a part", names.Parts.Keys),
        FactKind.Open => ("a joint", names.Joints.Keys),
        FactKind.State => ("a state", names.States.Keys),
        _ => ("a space", names.Spaces.Keys),
    };

    private static string Thing(FactKind kind) => kind switch
    {
        FactKind.Off or FactKind.Free => "a part or sub-assembly",
        FactKind.Open => "a joint",
        FactKind.State => "a state",
        _ => "a space",
    };

    private static void Stances(string place, string path, ValueList<Fact> clear, Names names, FaultBook book)
    {
        Fact? first = null;
        for (var i = 0; i < clear.Count; i++)
        {
            if (!names.IsStance(clear[i]) || clear[i] == first)
                continue;
            if (first is not null)
                book.Error(place, $"{path}[{i}]", $"{first} and {clear[i]} are both asked for, but a car is in one stance at a time",
                    "Keep one of them");
            first ??= clear[i];
        }
    }
}
