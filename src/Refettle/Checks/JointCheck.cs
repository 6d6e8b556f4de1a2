namespace Refettle.Checks;

/// <summary>Joints.</summary>
internal static class JointCheck
{
    private const decimal MostNewtonMetres = 100_000;

    public static void Run(Structure structure, Names names, FaultBook book)
    {
        foreach (var joint in structure.Joints)
            One(joint, names, book);
    }

    private static void One(Joint joint, Names names, FaultBook book)
    {
        var place = $"joint {joint.Id}";
        var holds = PartCheck.Listed(place, "holds", joint.Holds, names, book);
        if (holds < 2)
            book.Error(place, "holds", $"it holds {Words.Count(holds, "part")}", "Name the two or more parts that it holds together");
        PartCheck.Count(place, joint.Count, book);
        book.Range(place, "exposure", joint.Exposure ?? 0, 0, 4, "");
        if (joint.Torque is { Value: <= 0 or > MostNewtonMetres } torque)
            book.Error(place, "torque", $"torque is {torque}", $"Give more than 0 and at most {MostNewtonMetres:0} N·m, or leave it out");
        if (joint.Ways.Count == 0)
            NoWay(place, joint.Kind, book);
        WayCheck.Run(place, joint.Ways, names, book);
        WayCheck.Refit(place, "refit", joint.Refit, names, book);
        Bench(place, joint, names, book);
        LimitCheck.Run(place, joint.Limits, book);
    }

    private static void NoWay(string place, JointKind kind, FaultBook book) =>
        book.Error(place, "ways", "there is no way to open it", kind is JointKind.Weld or JointKind.Bond
            ? "Describe at least one way, with what it destroys: opening a weld or bond always destroys something"
            : "Describe at least one way");

    private static void Bench(string place, Joint joint, Names names, FaultBook book)
    {
        for (var i = 0; i < joint.Ways.Count; i++)
        {
            var stays = joint.Ways[i].Where == WorkPlace.OnBench ? joint.Holds.FirstOrDefault(names.IsFixed) : null;
            if (stays is not null)
                book.Error(place, $"ways[{i}].where", $"it is opened on the bench, but part {stays} is fixed and never gets there",
                    "Write where: on-car");
        }
    }
}
