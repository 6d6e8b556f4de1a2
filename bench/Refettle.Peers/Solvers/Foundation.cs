using Refettle.Access.Derivation;

namespace Refettle.Peers.Solvers;

/// <summary>What chosen ways can really make true, one after another, from nothing.</summary>
public static class Foundation
{
    /// <summary>The facts with a chosen way that never come true, because they only support each
    /// other or need what is not chosen.</summary>
    public static HashSet<int> Loose(DerivationProblem problem, int[] wayOf)
    {
        var loose = Enumerable.Range(0, problem.FactCount).Where(fact => wayOf[fact] >= 0).ToHashSet();
        var isTrue = new bool[problem.FactCount];
        int before;
        do
        {
            before = loose.Count;
            foreach (var fact in loose.Where(fact => problem.Needs[wayOf[fact]].All(need => isTrue[need])).ToList())
            {
                isTrue[fact] = true;
                loose.Remove(fact);
            }
        }
        while (loose.Count < before);
        return loose;
    }

    /// <summary>Everything wrong with an answer, found by replaying it; empty for a right one.</summary>
    public static List<string> Faults(DerivationProblem problem, DerivationAnswer answer)
    {
        var wayOf = answer.WayOf ?? throw new ArgumentException("There is no solution to replay.");
        var faults = new List<string>();
        foreach (var goal in problem.Goals.Where(goal => wayOf[goal] < 0))
            faults.Add($"goal {goal} is not made true");
        for (var fact = 0; fact < wayOf.Length; fact++)
        {
            if (wayOf[fact] >= 0 && problem.FactOf[wayOf[fact]] != fact)
                faults.Add($"fact {fact} is given way {wayOf[fact]} of another fact");
        }

        foreach (var fact in Loose(problem, wayOf))
            faults.Add($"fact {fact} rests on nothing");
        var cost = wayOf.Where(way => way >= 0).Sum(way => problem.Cost[way]);
        if (cost != answer.Cost)
            faults.Add($"the ways cost {cost}, the answer says {answer.Cost}");
        if (answer.Bound > answer.Cost)
            faults.Add($"the bound {answer.Bound} is above the cost {answer.Cost}");
        return faults;
    }
}
