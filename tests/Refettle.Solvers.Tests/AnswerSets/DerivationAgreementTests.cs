using System.Text;
using Refettle.Access.Derivation;
using Refettle.Peers.Solvers;
using Refettle.Tests.Access.Derivation;

namespace Refettle.Solvers.Tests.AnswerSets;

/// <summary>Derivation problems against clasp: in a stable model nothing rests on a circle, so foundedness is clasp's own.</summary>
public sealed class DerivationAgreementTests
{
    private const string Rules = """
        { use(W) } :- way(W,F,C), true(N) : need(W,N).
        true(F) :- use(W), way(W,F,C).
        :- goal(F), not true(F).
        #minimize { C,W : use(W), way(W,F,C) }.
        #show use/1.

        """;

    [ClaspFact]
    public void Random_graphs_cost_the_same()
    {
        for (var seed = 1000; seed < 1120; seed++)
        {
            var problem = RandomProblems.Make(seed, facts: 5 + seed % 25, mostNeeds: 4, goals: 1 + seed % 4);
            var least = Clasp.Least(Rules + Facts(problem));
            foreach (var solver in UnderTest.Names)
            {
                var answer = UnderTest.Make(solver).Solve(problem);
                Assert.True(least == (answer.WayOf is null ? null : answer.Cost),
                    $"{solver}, seed {seed}: clasp {least}, here {answer.Cost}");
                if (answer.WayOf is null)
                    continue;
                Assert.True(answer.IsOptimal, $"{solver}, seed {seed}: bound {answer.Bound}, cost {answer.Cost}");
                Assert.Empty(Foundation.Faults(problem, answer));
            }
        }
    }

    private static string Facts(DerivationProblem problem)
    {
        var text = new StringBuilder();
        for (var way = 0; way < problem.WayCount; way++)
        {
            text.Append($"way({way},{problem.FactOf[way]},{problem.Cost[way]}).");
            foreach (var need in problem.Needs[way])
                text.Append($"need({way},{need}).");
        }

        foreach (var goal in problem.Goals)
            text.Append($"goal({goal}).");
        return text.Append("need(none,none).\n").ToString();
    }
}
