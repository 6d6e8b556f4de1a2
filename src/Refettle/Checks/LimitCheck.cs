namespace Refettle.Checks;

/// <summary>Limits of parts, joints and spaces. Units are checked where they are read.</summary>
internal static class LimitCheck
{
    public static void Run(string place, ValueList<StatedLimit> limits, FaultBook book)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        for (var i = 0; i < limits.Count; i++)
        {
            One(place, $"limits[{i}]", limits[i], book);
            if (!seen.Add(limits[i].What))
                book.Error(place, $"limits[{i}].what", $"there is a limit for \"{limits[i].What}\" already", "Give both ends in one");
        }
    }

    private static void One(string place, string path, StatedLimit limit, FaultBook book)
    {
        if (string.IsNullOrWhiteSpace(limit.What))
            book.Error(place, $"{path}.what", "it is not said what is measured", "Write what: axial play");
        if (limit.Lower is null && limit.Upper is null)
            book.Error(place, path, "neither end of the limit is given", "Write least, most or both, like most: 0.5 mm");
        if (limit.Lower >= limit.Upper)
            book.Error(place, $"{path}.least",
                $"the least, {limit.Lower:0.####} {limit.Unit}, is not below the most, {limit.Upper:0.####} {limit.Unit}", "Exchange them");
        if (limit.Origin == Origin.Default)
            book.Error(place, $"{path}.origin", "a limit has to come from somewhere", "Write maker, common-practice, user or measured");
    }
}
