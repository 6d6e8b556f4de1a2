namespace Refettle.Cli.Verbs;

/// <summary>Finds entries by the marks that the log shows.</summary>
internal static class Marks
{
    private const int LeastLetters = 4;

    public static Result<Guid> Find(OpenCar open, string mark)
    {
        if (mark == "last")
            return Result<Guid>.Good(open.History.Lines[open.History.Lines.Count - 1].Entry.Id);
        var found = mark.Length < LeastLetters ? [] : open.Entries.Select(entry => entry.Id)
            .Where(id => $"{id:N}".Contains(mark.Replace("-", "", StringComparison.Ordinal), StringComparison.OrdinalIgnoreCase)).ToList();
        return found.Count == 1
            ? Result<Guid>.Good(found[0])
            : Result<Guid>.Bad(new Fault($"entry {mark}", found.Count == 0 ? "the log has no such entry" : $"{found.Count} entries match",
                "refettle log shows each entry's mark."));
    }

    /// <summary>All of them, or what is wrong with each.</summary>
    public static Result<ValueList<Guid>> FindAll(OpenCar open, IEnumerable<string> marks)
    {
        var found = marks.Select(mark => Find(open, mark)).ToList();
        return found.TrueForAll(one => one.IsGood)
            ? Result<ValueList<Guid>>.Good(found.Select(one => one.Value).ToValueList())
            : Result<ValueList<Guid>>.Bad(found.SelectMany(one => one.Faults));
    }
}
