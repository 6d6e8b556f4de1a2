namespace Refettle.Stuck.OpenUp;

/// <summary>The tables of joints that are alike, made once for a question and its variants.</summary>
internal sealed class TablesCache
{
    private readonly Dictionary<string, JointTables> _known = [];
    private readonly Dictionary<(string Like, string Joints), Group> _groups = [];
    private readonly List<HashSet<int>> _wanting;

    public TablesCache(OpenUpQuestion question)
    {
        Opening = new(question);
        _wanting = [.. question.Joints.Select(joint => joint.Needs.Values.SelectMany(needs => needs).ToHashSet())];
    }

    public OpeningCost Opening { get; }

    public JointTables Of(StuckJoint joint)
    {
        var key = Key(joint);
        if (!_known.TryGetValue(key, out var tables))
            _known.Add(key, tables = new(joint, Share));
        return tables;
    }

    public double MinutesOf(StuckJoint joint, Rung rung) => Of(joint).RowsOf(0).MinutesOf(rung);

    /// <summary>Joints with one key are alike.</summary>
    public static string LikeKey(StuckJoint joint) =>
        $"{Key(joint)}|{joint.Place}|{string.Join(';', joint.Levels.Select(levels => string.Join(',', levels)))}";

    /// <summary>Joints that are alike, together; the same as long as they are the same.</summary>
    public Group GroupOf(string like, List<StuckJoint> joints)
    {
        var key = (like, string.Join(',', joints.Select(joint => joint.Id)));
        if (!_groups.TryGetValue(key, out var group))
            _groups.Add(key, group = new(Of(joints[0]), joints[0].Place, joints[0].Levels, joints.Select(joint => joint.Id).ToValueList()));
        return group;
    }

    /// <summary>Joints with one key have one table.</summary>
    private static string Key(StuckJoint joint) => string.Join('|',
        joint.Condition, joint.IsSoaked, joint.PerHour,
        string.Join(',', joint.Ladders.OrderBy(pair => pair.Key).Select(pair => pair.Value.Id)),
        string.Join(',', joint.Tried.Order(StringComparer.Ordinal)), string.Join(',', joint.Forbidden.Order(StringComparer.Ordinal)),
        string.Join(';',
            joint.Needs.OrderBy(need => need.Key, StringComparer.Ordinal)
                .Select(need => $"{need.Key}:{string.Join(',', need.Value.Order())}")),
        string.Join(',', joint.Belief));

    /// <summary>What opening costs, shared among the joints that want any of it.</summary>
    private double Share(int accesses) =>
        Opening.Of(accesses) / Math.Max(1, _wanting.Count(wants => wants.Any(access => (accesses & (1 << access)) != 0)));
}
