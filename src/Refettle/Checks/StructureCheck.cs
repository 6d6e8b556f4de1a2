namespace Refettle.Checks;

/// <summary>Whether a structure makes sense: the same check for sheets, kits, spreadsheets and edits on a page.</summary>
public static class StructureCheck
{
    /// <summary>All faults, errors and notes, each with the thing (<c>joint x</c>) and the path of keys
    /// inside it. Time linear in the size.</summary>
    public static ValueList<Fault> Of(Structure structure)
    {
        var book = new FaultBook();
        var names = new Names(structure);
        IdentifierCheck.Run(structure, book);
        PartCheck.Run(structure, names, book);
        JointCheck.Run(structure, names, book);
        StateCheck.Run(structure, names, book);
        SpaceCheck.Run(structure, names, book);
        CircleCheck.Run(structure, names, book);
        return book.ToList();
    }
}
