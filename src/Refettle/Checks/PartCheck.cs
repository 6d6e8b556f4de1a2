namespace Refettle.Checks;

/// <summary>Parts, sub-assemblies and zones.</summary>
internal static class PartCheck
{
    public const decimal MostMoney = 100_000_000;

    private const int MostAlike = 1_000;
    private const decimal MostKilograms = 100_000;

    public static void Run(Structure structure, Names names, FaultBook book)
    {
        foreach (var zone in structure.Zones)
            ZoneOf(zone, names, book);
        foreach (var part in structure.Parts)
            PartOf(part, names, book);
        foreach (var unit in structure.SubAssemblies)
            UnitOf(unit, names, book);
    }

    public static void Zone(string place, string zone, Names names, FaultBook book)
    {
        if (zone != Refettle.Zone.WholeCar && !names.Zones.ContainsKey(zone))
            book.Unknown(place, "zone", zone, "a zone", names.Zones.Keys.Append(Refettle.Zone.WholeCar));
    }

    public static void Name(string place, string? name, FaultBook book)
    {
        if (string.IsNullOrWhiteSpace(name))
            book.Error(place, "name", "the name is empty", "Write what a mechanic would call it");
    }

    public static void Count(string place, int count, FaultBook book) => book.Range(place, "count", count, 1, MostAlike, "");

    private static void ZoneOf(Zone zone, Names names, FaultBook book)
    {
        var place = $"zone {zone.Id}";
        Name(place, zone.Name, book);
        book.Range(place, "exposure", zone.Exposure, 0, 4, "");
        WayCheck.Posture(place, "posture", zone.Posture, book);
        foreach (var near in zone.Near)
            Zone(place, near, names, book);
    }

    private static void PartOf(Part part, Names names, FaultBook book)
    {
        var place = $"part {part.Id}";
        Name(place, part.Name, book);
        Zone(place, part.Zone, names, book);
        Count(place, part.Count, book);
        book.Range(place, "price", part.Price?.Amount ?? 0, 0, MostMoney, "");
        if (part.Mass is { Value: <= 0 or > MostKilograms } mass)
            book.Error(place, "mass", $"mass is {mass}", $"Give more than 0 and at most {MostKilograms:0} kg, or leave it out");
        Roles(place, part.Roles, book);
        WayCheck.Out(place, part.Out, names, book);
        LimitCheck.Run(place, part.Limits, book);
    }

    private static void Roles(string place, ValueList<string> roles, FaultBook book)
    {
        for (var i = 0; i < roles.Count; i++)
        {
            if (!Identifier.IsValid(roles[i]))
                book.Error(place, $"roles[{i}]", $"\"{roles[i]}\" cannot be a role", "Use small letters, digits and - only");
        }
    }

    private static void UnitOf(SubAssembly unit, Names names, FaultBook book)
    {
        var place = $"sub-assembly {unit.Id}";
        Name(place, unit.Name, book);
        Roles(place, unit.Roles, book);
        var members = Listed(place, "members", unit.Members, names, book);
        if (members < 2)
            book.Error(place, "members", $"it has {Words.Count(members, "member")}", "Name two or more parts");
        foreach (var part in unit.Members.Where(names.IsFixed))
            book.Error(place, "members", $"part {part} is fixed and never comes off", "Leave it out of the sub-assembly");
        WayCheck.Out(place, unit.Out, names, book);
    }

    /// <summary>Checks that each name is a part's and is there once; returns how many different ones there are.</summary>
    public static int Listed(string place, string path, ValueList<string> parts, Names names, FaultBook book)
    {
        var seen = new HashSet<string>();
        for (var i = 0; i < parts.Count; i++)
        {
            if (!seen.Add(parts[i]))
                book.Error(place, $"{path}[{i}]", $"\"{parts[i]}\" is named twice", "Name it once");
            else if (!names.Parts.ContainsKey(parts[i]))
                book.Unknown(place, $"{path}[{i}]", parts[i], "a part", names.Parts.Keys);
        }

        return seen.Count;
    }
}
