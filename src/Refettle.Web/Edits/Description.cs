using Refettle.Checks;

namespace Refettle.Web.Edits;

/// <summary>Whether a change of a car's description may be written.</summary>
public static class Description
{
    /// <summary>What would be wrong afterwards and is not wrong now: a car that has a fault can still be mended.</summary>
    public static ValueList<Fault> NewFaults(Structure now, Structure added) =>
        StructureCheck.Of(now.With(added)).Except(StructureCheck.Of(now)).ToValueList();

    /// <summary>An identifier made from a name that nothing of its kind has yet.</summary>
    public static string FreeId(string name, IEnumerable<string> taken)
    {
        var ids = taken.ToHashSet();
        var wanted = Identifier.From(name) is { Length: > 0 } made ? made : "thing";
        return Enumerable.Range(1, ids.Count + 1).Select(n => n == 1 ? wanted : $"{wanted}-{n}").First(id => !ids.Contains(id));
    }
}
