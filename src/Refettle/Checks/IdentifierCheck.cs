namespace Refettle.Checks;

/// <summary>Identifiers: their form, and that no two things share one.</summary>
internal static class IdentifierCheck
{
    public static void Run(Structure structure, FaultBook book)
    {
        var parts = new Dictionary<string, string>();
        Each("part", structure.Parts.Select(part => part.Id), parts, book);
        Each("sub-assembly", structure.SubAssemblies.Select(unit => unit.Id), parts, book);
        Each("joint", structure.Joints.Select(joint => joint.Id), [], book);
        Each("state", structure.States.Select(state => state.Id), [], book);
        Each("space", structure.Spaces.Select(space => space.Id), [], book);
        Each("zone", structure.Zones.Select(zone => zone.Id), [], book);
    }

    private static void Each(string kind, IEnumerable<string> ids, Dictionary<string, string> taken, FaultBook book)
    {
        foreach (var id in ids)
        {
            var place = $"{kind} {id}";
            if (!Identifier.IsValid(id))
                book.Error(place, "", $"\"{id}\" cannot be an identifier", Form(id));
            else if (!taken.TryAdd(id, kind))
                book.Error(place, "", $"there is a {taken[id]} \"{id}\" already", "Give each its own identifier");
        }
    }

    private static string Form(string id)
    {
        var near = Identifier.From(id);
        var rule = $"Use small letters, digits, - _ and . only, beginning with a letter or digit, at most {Identifier.MaxLength} long";
        return near.Length == 0 ? rule : $"{rule}: \"{near}\"";
    }
}
