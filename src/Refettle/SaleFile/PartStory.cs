namespace Refettle.SaleFile;

/// <summary>What a part is now, as far as the log shows.</summary>
internal enum Provenance
{
    /// <summary>Taken off and put back; no other part is recorded in its place.</summary>
    PutBack,
    New,
    Used,
    Refurbished,
    Substituted,

    /// <summary>Decided to be renewed or substituted, taken off and put back, with no other part recorded.</summary>
    Unclear,

    /// <summary>Off the car today.</summary>
    Off,

    /// <summary>Worked on or looked at, and never taken off.</summary>
    StayedOn,
}

/// <summary>One part from first to last.</summary>
internal sealed record PartStory(Part Part, Provenance Provenance, string Before, string Work, string After, ValueList<int> Entries)
{
    private const int Most = 3;

    /// <summary>What is recorded last in its place, whether it is on the car today or off.</summary>
    public Provenance Piece { get; private init; }

    /// <summary>The stories of all parts that the log has something about, in the order of the car's description.</summary>
    public static ValueList<PartStory> Of(Car car, IEnumerable<Witness> witnesses)
    {
        var byPart = witnesses.ToLookup(witness => witness.Part);
        var joints = car.Structure.Joints.SelectMany(joint => joint.Holds.Select(part => (part, joint)))
            .ToLookup(pair => pair.part, pair => pair.joint);
        var done = car.Done.ToHashSet();
        return car.Structure.Parts.Where(part => byPart.Contains(part.Id))
            .Select(part => Of(part, [.. byPart[part.Id]], done, [.. joints[part.Id]])).ToValueList();
    }

    private static PartStory Of(Part part, Witness[] witnesses, HashSet<Fact> done, Joint[] joints)
    {
        var fitted = Array.FindLastIndex(witnesses,
            witness => witness.Shows is not (Shows.Condition or Shows.TakenOff or Shows.Work or Shows.Refurbished));
        var isOff = done.Contains(Fact.Off(part.Id));
        var before = witnesses.Where((witness, i) => witness.Shows == Shows.Condition && (fitted < 0 || i < fitted));
        var after = witnesses.Where((witness, i) => witness.Shows == Shows.Condition && fitted >= 0 && i > fitted)
            .Select(witness => witness.Says);
        var open = joints.Count(joint => done.Contains(Fact.Open(joint.Id)));
        return new(part, Stands(witnesses, isOff), Joined(before.Select(witness => witness.Says)),
            Joined(witnesses.Where(witness => witness.Shows != Shows.Condition)
                .Select(witness => $"{witness.Says} {witness.Entry.Day:yyyy-MM-dd}")),
            Joined([.. after, isOff ? "off the car" : open == 0 ? "on the car" : $"on the car, {open} of its {joints.Length} joints open"]),
            witnesses.Select(witness => witness.Entry.Number).Distinct().ToValueList())
        { Piece = Stands(witnesses, isOff: false) };
    }

    private static Provenance Stands(Witness[] witnesses, bool isOff)
    {
        if (isOff)
            return Provenance.Off;
        var last = Array.FindLastIndex(witnesses,
            witness => witness.Shows is not (Shows.Condition or Shows.TakenOff or Shows.Work or Shows.Fitted));
        var decided = witnesses.Take(last < 0 ? witnesses.Length : last).Where(witness => witness.Decided is not null)
            .Select(witness => witness.Decided).LastOrDefault();
        return last < 0 ? Unrecorded(witnesses, decided) : witnesses[last].Shows switch
        {
            Shows.FittedNew or Shows.FittedUsed or Shows.FittedRefurbished when decided == VerdictKind.Substitute => Provenance.Substituted,
            Shows.FittedNew => Provenance.New,
            Shows.FittedUsed => Provenance.Used,
            Shows.Refurbished or Shows.FittedRefurbished => Provenance.Refurbished,
            _ => Unrecorded(witnesses, decided),
        };
    }

    private static Provenance Unrecorded(Witness[] witnesses, VerdictKind? decided) =>
        !witnesses.Any(witness => witness.Shows == Shows.TakenOff) ? Provenance.StayedOn
        : decided is VerdictKind.Replace or VerdictKind.Substitute ? Provenance.Unclear : Provenance.PutBack;

    /// <summary>The first few, and how many more there are: every entry is in the log at the end.</summary>
    private static string Joined(IEnumerable<string> says)
    {
        var all = says.Distinct().ToList();
        return all.Count <= Most ? string.Join("; ", all) : $"{string.Join("; ", all.Take(Most))}; and {all.Count - Most} more";
    }
}
