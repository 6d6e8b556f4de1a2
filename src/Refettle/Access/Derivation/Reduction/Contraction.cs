namespace Refettle.Access.Derivation.Reduction;

/// <summary>Melts a fact that has one way into the ways that need it: when one way only needs it, or when it costs nothing.</summary>
internal sealed class Contraction
{
    // A free fact with several users is melted while that adds few needs in all.
    private const int MostAddedNeeds = 4;

    private readonly Core _core;
    private readonly HashSet<int>[] _needs;
    private readonly HashSet<int>[] _users;
    private readonly long[] _cost;
    private readonly List<int>?[] _stands;
    private readonly bool[] _keep;
    private readonly int[] _wayCount;

    private Contraction(Core core)
    {
        var problem = core.Problem;
        _core = core;
        _needs = [.. problem.Needs.Select(needs => needs.ToHashSet())];
        _users = [.. Enumerable.Range(0, problem.FactCount).Select(fact => problem.UsersOf(fact).ToArray().ToHashSet())];
        _cost = [.. problem.Cost];
        _stands = new List<int>?[problem.WayCount];
        _keep = new bool[problem.WayCount];
        Array.Fill(_keep, true);
        _wayCount = [.. Enumerable.Range(0, problem.FactCount).Select(fact => problem.WaysOf(fact).Length)];
    }

    public static Core Apply(Core core)
    {
        var contraction = new Contraction(core);
        var isGoal = new bool[core.Problem.FactCount];
        foreach (var goal in core.Problem.Goals)
            isGoal[goal] = true;
        var isChanged = false;
        for (var fact = 0; fact < isGoal.Length; fact++)
            isChanged |= !isGoal[fact] && contraction.TryMelt(fact);
        return isChanged ? contraction.Result() : core;
    }

    private bool TryMelt(int fact)
    {
        var users = _users[fact];
        if (_wayCount[fact] != 1 || users.Count == 0)
            return false;
        var way = OnlyWay(fact);
        var isCheap = _cost[way] == 0 && (users.Count - 1) * (_needs[way].Count - 1) <= MostAddedNeeds;
        if (_needs[way].Contains(fact) || (users.Count > 1 && !isCheap))
            return false;
        foreach (var user in users.ToArray())
            Melt(fact, way, user);
        DropWay(way);
        return true;
    }

    private void Melt(int fact, int way, int user)
    {
        _needs[user].Remove(fact);
        _users[fact].Remove(user);
        _cost[user] += _cost[way];
        (_stands[user] ??= [.. _core.Stands[user]]).AddRange(_stands[way] ?? [.. _core.Stands[way]]);
        foreach (var need in _needs[way])
        {
            _needs[user].Add(need);
            _users[need].Add(user);
        }

        if (_needs[user].Contains(_core.Problem.FactOf[user]))
            DropWay(user);
    }

    private void DropWay(int way)
    {
        _keep[way] = false;
        _wayCount[_core.Problem.FactOf[way]]--;
        foreach (var need in _needs[way])
            _users[need].Remove(way);
    }

    private int OnlyWay(int fact)
    {
        foreach (var way in _core.Problem.WaysOf(fact))
        {
            if (_keep[way])
                return way;
        }

        throw new InvalidOperationException("A fact counted one way and has none.");
    }

    private Core Result()
    {
        var problem = _core.Problem;
        var stands = _core.Stands.Select((stands, way) => _stands[way]?.Distinct().ToArray() ?? stands).ToArray();
        var melted = new Core(
            new(problem.FactCount, [.. problem.FactOf], [.. _needs.Select(needs => needs.ToArray())], _cost, [.. problem.Goals]),
            stands,
            _core.Settled);
        return melted.Keep(_keep, way => [.. melted.Problem.Needs[way]], problem.Goals);
    }
}
