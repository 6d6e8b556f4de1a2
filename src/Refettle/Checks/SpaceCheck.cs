namespace Refettle.Checks;

/// <summary>Spaces.</summary>
internal static class SpaceCheck
{
    public static void Run(Structure structure, Names names, FaultBook book)
    {
        foreach (var space in structure.Spaces)
        {
            var place = $"space {space.Id}";
            PartCheck.Name(place, space.Name, book);
            PartCheck.Zone(place, space.Zone, names, book);
            if (PartCheck.Listed(place, "closed-by", space.ClosedBy, names, book) == 0)
                book.Error(place, "closed-by", "nothing closes it", "Name the parts that have to be off before it can be reached");
            foreach (var part in space.ClosedBy.Where(names.IsFixed))
                book.Error(place, "closed-by", $"part {part} is fixed and never comes off", "Leave it out");
            LimitCheck.Run(place, space.Limits, book);
        }
    }
}
