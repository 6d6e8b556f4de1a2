namespace Refettle.Stuck.OpenUp;

/// <summary>Decides what to open before a set of stuck joints is tried: a two-stage stochastic programme with recourse.</summary>
/// <remarks>Exact over all sets of up to <see cref="MostExact"/> accesses: given the levels of the places, joints that nothing tells apart
/// differ only in how many of them held, so that few outcomes stand for all (Birge and Louveaux,
/// Introduction to Stochastic Programming, for the form of the problem). Beyond, and where the outcomes are too many, outcomes are drawn by
/// chance and the answer says how sure it is.</remarks>
public static class OpenUpPlanner
{
    /// <summary>Up to this many accesses every set is weighed.</summary>
    public const int MostExact = 8;

    /// <summary>The most accesses that one joint may want.</summary>
    public const int MostPerJoint = 8;

    private const int Draws = 1024;

    /// <summary>Whether one try would change the advice is told only where it is clear, so fewer cars do.</summary>
    private const int DrawsForTries = 256;

    /// <param name="question">A question without faults (<see cref="OpenUpCheck.Of(OpenUpQuestion)"/>).</param>
    /// <param name="random">For what has to be sampled; seeded, so that the same question has the same answer.</param>
    public static OpenUpAnswer Best(OpenUpQuestion question, Func<Random> random)
    {
        var cache = new TablesCache(question);
        var weighed = Weigh(question, cache, random(), Draws);
        var turnings = Turnings.Of(question, cache, weighed, changed => Weigh(changed, cache, random(), DrawsForTries));
        var answer = Answer(question, weighed, turnings);
        var faults = OpenUpCheck.Of(question, answer);
        return faults.Count == 0 ? answer : throw new InvalidOperationException("The advice contradicts itself: " + faults[0]);
    }

    internal static Weighed Weigh(OpenUpQuestion question, TablesCache cache, Random random, int draws) =>
        new Search(question, Group.Of(question, cache), cache.Opening, random, draws).Weigh();

    private static OpenUpAnswer Answer(OpenUpQuestion question, Weighed weighed, ValueList<Turning> turnings)
    {
        var (tryFirst, openNow) = (weighed.Of(0), weighed.BestNow);
        return new()
        {
            Best = ChoiceOf(question, openNow is null || tryFirst.Total <= openNow.Total ? tryFirst : openNow),
            TryFirst = ChoiceOf(question, tryFirst),
            OpenNow = ChoiceOf(question, openNow ?? tryFirst),
            Choices = weighed.All.OrderBy(one => one.Total).Select(one => ChoiceOf(question, one)).ToValueList(),
            OpensLater = tryFirst.Later.Opens,
            BreakEven = openNow is null ? null : BreakEven(tryFirst, openNow.Total),
            Turnings = turnings,
            Joints = weighed.Groups.SelectMany(group => group.Joints.Select(joint => TriedFirst(joint, group, weighed.Best.First)))
                .ToValueList(),
        };
    }

    private static TriedFirst TriedFirst(string joint, Group group, int open) => new(
        joint, group.Tables.PassOf(open).Rungs.Select(rung => rung.Id).ToValueList(), (group.Tables.Wants & ~open) != 0);

    private static double? BreakEven(WeighedSet tryFirst, double openNow)
    {
        if (tryFirst.Later.Apart is not ({ } opening, { } notOpening))
            return null;
        var odds = (openNow - tryFirst.Certain - notOpening) / (opening - notOpening);
        return odds is > 0 and < 1 ? odds : null;
    }

    internal static Choice ChoiceOf(OpenUpQuestion question, WeighedSet one) =>
        new(Names(question, one.First), one.Total, one.IsExact ? 0 : one.Later.HalfWidth);

    internal static ValueList<string> Names(OpenUpQuestion question, int accesses) =>
        question.Openings.Where((_, number) => (accesses & (1 << number)) != 0).Select(access => access.Id).ToValueList();
}
