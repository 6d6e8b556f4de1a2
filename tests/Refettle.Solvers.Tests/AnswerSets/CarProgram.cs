using System.Text;
using Refettle.Access;

namespace Refettle.Solvers.Tests.AnswerSets;

/// <summary>The access model as an answer set program, written from its description and not from the planner.</summary>
internal static class CarProgram
{
    // A part comes off alone or with a unit it belongs to; joints and states by one of their ways. Parts that the question
    // forbids stay on and their joints closed; what is unique is not destroyed; each unique part that comes off is paid for once.
    private const string Rules = Model + """
        :- lifted(X).
        #minimize { C,alone,P : alone(P), cost(P,C); C,leave,G : leave(G), cost(G,C); C,use,W : use(W), cost(W,C) }.
        #minimize { C,unique,P : unique(P), true(off(P)), not done(off(P)), penalty(C) }.

        """;

    // What is forbidden may be lifted; the fewest liftings are wanted.
    private const string Permissions = Model + """
        #minimize { 1,X : lifted(X) }.

        """;

    private const string Model = """
        true(F) :- done(F).
        { alone(P) } :- part(P), not stays(P), true(open(J)) : joins(J,P); true(F) : outneeds(P,F).
        { leave(G) } :- unit(G), not stays(P) : member(G,P); true(open(J)) : outer(G,J); true(F) : outneeds(G,F).
        true(off(P)) :- alone(P).
        true(off(G)) :- leave(G).
        true(off(P)) :- leave(G), member(G,P).
        true(free(P)) :- part(P), true(off(P)); true(open(J)) : joins(J,P).
        { use(W) } :- way(W,F), not wrong(W); true(N) : needs(W,N); true(off(P)) : bench(W,P).
        true(F) :- use(W), way(W,F).
        true(reach(X)) :- space(X); true(off(P)) : closes(X,P).
        { lifted(touch(P)) } :- without(P).
        { lifted(destroy(P)) } :- without(P).
        { lifted(destroy(P)) } :- unique(P).
        wrong(W) :- way(W,open(J)), joins(J,P), without(P), not lifted(touch(P)).
        wrong(W) :- destroys(W,P), without(P), not lifted(destroy(P)).
        wrong(W) :- destroys(W,P), unique(P), not lifted(destroy(P)).
        stays(P) :- fixed(P).
        stays(P) :- without(P), not lifted(touch(P)).
        :- goal(F), not true(F).
        outer(G,J) :- member(G,P), joins(J,P), joins(J,Q), not member(G,Q), unit(G).
        #defined done/1. #defined without/1. #defined unique/1. #defined fixed/1. #defined bench/2. #defined destroys/2. #defined outneeds/2.
        #defined needs/2. #defined closes/2. #defined space/1. #defined unit/1. #defined member/2.
        #show alone/1. #show leave/1. #show use/1.

        """;

    /// <summary>Its least sum is the least cost in hundredths of a minute.</summary>
    public static string Of(Car car, Question question) => Rules + Instance(car, question);

    /// <summary>Its least sum is the smallest number of permissions with which the goals can be reached.</summary>
    public static string OfPermissions(Car car, Question question) => Permissions + Instance(car, question);

    private static string Instance(Car car, Question question)
    {
        var text = new StringBuilder();
        foreach (var part in car.Structure.Parts)
            Add(text, part);
        foreach (var joint in car.Structure.Joints)
            Add(text, car, joint);
        foreach (var unit in car.Structure.SubAssemblies)
        {
            text.Append($"unit(\"{unit.Id}\").");
            AddOut(text, unit.Id, unit.Out);
            foreach (var member in unit.Members)
                text.Append($"member(\"{unit.Id}\",\"{member}\").");
        }

        foreach (var state in car.Structure.States)
            AddWays(text, car, $"state(\"{state.Id}\")", state.Id, state.Ways);
        foreach (var space in car.Structure.Spaces)
            text.Append($"space(\"{space.Id}\").").AppendJoin("", space.ClosedBy.Select(part => $"closes(\"{space.Id}\",\"{part}\")."));
        text.AppendJoin("", question.Without.Select(part => $"without(\"{part}\")."));
        text.AppendJoin("", question.Goals.Select(goal => $"goal({Term(goal)})."));
        text.AppendJoin("", car.Done.Select(fact => $"done({Term(fact)})."));
        return text.Append($"penalty({Hundredths(car.Settings.UniqueOff)}).\n").ToString();
    }

    private static void Add(StringBuilder text, Part part)
    {
        text.Append($"part(\"{part.Id}\").");
        AddOut(text, part.Id, part.Out);
        if (part.Fixed)
            text.Append($"fixed(\"{part.Id}\").");
        if (part.Scarcity == Scarcity.Unique)
            text.Append($"unique(\"{part.Id}\").");
    }

    private static void Add(StringBuilder text, Car car, Joint joint)
    {
        text.AppendJoin("", joint.Holds.Select(part => $"joins(\"{joint.Id}\",\"{part}\")."));
        AddWays(text, car, $"open(\"{joint.Id}\")", joint.Id, joint.Ways);
        foreach (var way in joint.Ways.Where(way => way.Where == WorkPlace.OnBench))
            text.AppendJoin("", joint.Holds.Select(part => $"bench(\"{joint.Id}/{way.Id}\",\"{part}\")."));
    }

    private static void AddWays(StringBuilder text, Car car, string fact, string owner, IEnumerable<Way> ways)
    {
        foreach (var way in ways)
        {
            var name = $"\"{owner}/{way.Id}\"";
            var money = way.Spends.Amount
                + way.Destroys.Sum(part => car.Structure.Parts.Single(other => other.Id == part).Price!.Value.Amount);
            var minutes = new Minutes(way.Open.Value + way.Close.Value + decimal.Round(money * 60 / car.Settings.PerHour.Amount, 2));
            text.Append($"way({name},{fact}).cost({name},{Hundredths(minutes)}).");
            text.AppendJoin("", way.Clear.Select(need => $"needs({name},{Term(need)})."));
            text.AppendJoin("", way.Destroys.Select(part => $"destroys({name},\"{part}\")."));
        }
    }

    private static void AddOut(StringBuilder text, string owner, WayOut way) =>
        text.Append($"cost(\"{owner}\",{Hundredths(way.Off + way.On)}).")
            .AppendJoin("", way.Clear.Select(need => $"outneeds(\"{owner}\",{Term(need)})."));

    private static string Term(Fact fact) => $"{fact.Kind.ToString().ToLowerInvariant()}(\"{fact.Subject}\")";

    private static long Hundredths(Minutes minutes) => (long)(minutes.Value * 100);
}
