namespace Refettle.Stuck.OpenUp;

/// <summary>Joints that nothing tells apart: of them only the number that held matters.</summary>
/// <param name="tables">What happens at one of them.</param>
/// <param name="place">The number of their place.</param>
/// <param name="levels">For each level of the place the chances of a joint's own levels.</param>
internal sealed class Group(JointTables tables, int place, ValueList<ValueList<double>> levels, ValueList<string> joints)
{
    private readonly Dictionary<int, Waiting> _waiting = [];

    public JointTables Tables => tables;

    public int Place => place;

    public ValueList<string> Joints => joints;

    public int Count => joints.Count;

    /// <summary>The joints when a set of accesses is open while the tries begin.</summary>
    public Waiting Waiting(int first)
    {
        if (!_waiting.TryGetValue(first & tables.Wants, out var waiting))
            _waiting.Add(first & tables.Wants, waiting = new(this, first & tables.Wants));
        return waiting;
    }

    /// <summary>The mean over a joint's own levels, for each level of the place.</summary>
    public double[] OverLevels(double[] values)
    {
        var means = new double[SeizureModel.Levels];
        for (var atPlace = 0; atPlace < means.Length; atPlace++)
        {
            for (var level = 0; level < values.Length; level++)
                means[atPlace] += levels[atPlace][level] * values[level];
        }

        return means;
    }

    public static ValueList<Group> Of(OpenUpQuestion question, TablesCache cache) =>
        question.Joints.GroupBy(TablesCache.LikeKey).Select(alike => cache.GroupOf(alike.Key, alike.ToList())).ToValueList();
}
