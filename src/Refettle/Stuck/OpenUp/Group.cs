namespace Refettle.Stuck.OpenUp;

/// <summary>Joints that nothing tells apart: of them only the number that held matters.</summary>
/// <param name="Tables">What happens at one of them.</param>
/// <param name="Place">The number of their place.</param>
/// <param name="Levels">For each level of the place the chances of a joint's own levels.</param>
internal sealed record Group(JointTables Tables, int Place, ValueList<ValueList<double>> Levels, ValueList<string> Joints)
{
    public int Count => Joints.Count;

    /// <summary>The mean over a joint's own levels, for each level of the place.</summary>
    public double[] OverLevels(double[] values)
    {
        var means = new double[SeizureModel.Levels];
        for (var place = 0; place < means.Length; place++)
        {
            for (var level = 0; level < values.Length; level++)
                means[place] += Levels[place][level] * values[level];
        }

        return means;
    }

    public static ValueList<Group> Of(OpenUpQuestion question, TablesCache cache) => question.Joints
        .GroupBy(joint => $"{TablesCache.Key(joint)}|{joint.Place}|{string.Join(';', joint.Levels.Select(levels => string.Join(',', levels)))}")
        .Select(alike => new Group(cache.Of(alike.First()), alike.First().Place, alike.First().Levels, alike.Select(joint => joint.Id).ToValueList()))
        .ToValueList();
}

/// <summary>What opening sets of accesses takes; steps that several share are paid once.</summary>
internal sealed class OpeningCost
{
    private readonly OpenUpQuestion _question;
    private readonly Dictionary<int, double> _minutes = [];

    public OpeningCost(OpenUpQuestion question) => _question = question;

    /// <summary>Minutes to open a set at once.</summary>
    public double Of(int accesses)
    {
        if (!_minutes.TryGetValue(accesses, out var minutes))
        {
            var steps = _question.Openings.Where((_, number) => (accesses & (1 << number)) != 0).SelectMany(access => access.Steps).Distinct();
            _minutes.Add(accesses, minutes = steps.Sum(step => (double)_question.Steps[step].Takes.Value));
        }

        return minutes;
    }

    /// <summary>Minutes to open more later.</summary>
    public double Later(int first, int then) => first == then
        ? 0
        : (double)_question.Later.Once.Value + (_question.Later.Factor * (Of(then) - Of(first)));
}
