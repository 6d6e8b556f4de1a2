namespace Refettle.Access.Derivation.Reduction;

/// <summary>Drops ways that another way of the same fact can always replace at no higher cost, using up no more of anything.</summary>
internal sealed class Dominance
{
    private readonly DerivationProblem _problem;
    private readonly CheapestAlone _alone;
    private readonly Figure[] _figures;
    private readonly bool[] _keep;

    private Dominance(Core core, long[][] uses)
    {
        _problem = core.Problem;
        _alone = CheapestAlone.Of(_problem);
        _figures = [new([.. _problem.Cost], _alone.Cost),
            .. uses.Select(core.Sums).Select(use => new Figure(use, _alone.Sums(_problem, use)))];
        _keep = new bool[_problem.WayCount];
        Array.Fill(_keep, true);
    }

    /// <summary>The core without such ways.</summary>
    /// <param name="core">The core.</param>
    /// <param name="uses">What the ways of the first problem use up, besides their cost.</param>
    public static Core Drop(Core core, params long[][] uses)
    {
        var dominance = new Dominance(core, uses);
        return dominance.IsChanged() ? core.Keep(dominance._keep, way => [.. core.Problem.Needs[way]], core.Problem.Goals) : core;
    }

    private bool IsChanged()
    {
        var isChanged = false;
        for (var fact = 0; fact < _problem.FactCount; fact++)
        {
            var ways = _problem.WaysOf(fact);
            foreach (var way in ways)
            {
                if (ways.Length > 1 && IsDominated(ways, way))
                    _keep[way] = !(isChanged = true);
            }
        }

        return isChanged;
    }

    // Deriving the fact from scratch by its cheapest way replaces a way that costs as much by itself: all facts of that
    // derivation take its ways, none of which needs the fact, so no circle can arise.
    private bool IsDominated(ReadOnlySpan<int> ways, int way)
    {
        var fact = _problem.FactOf[way];
        if (_alone.Way[fact] != way && _keep[_alone.Way[fact]]
            && Array.TrueForAll(_figures, figure => figure.Of[way] >= figure.Alone[fact]))
            return true;
        foreach (var other in ways)
        {
            if (other != way && _keep[other] && Array.TrueForAll(_figures, figure => figure.Of[other] <= figure.Of[way])
                && _problem.Needs[other].Length <= _problem.Needs[way].Length
                && _problem.Needs[other].All(need => _problem.Needs[way].Contains(need)))
                return true;
        }

        return false;
    }

    /// <summary>Cost, or something used up: of each way, and of each fact derived from scratch.</summary>
    private sealed record Figure(long[] Of, long[] Alone);
}
