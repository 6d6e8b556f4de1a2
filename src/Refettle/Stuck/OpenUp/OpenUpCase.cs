using Refettle.Access;

namespace Refettle.Stuck.OpenUp;

/// <summary>The question of what to open first, made from a car.</summary>
public sealed record OpenUpCase
{
    public required OpenUpQuestion Question { get; init; }

    /// <summary>What is done in any case before the tries: what is planned, and what the joints' easiest ways need.</summary>
    public required Plan Before { get; init; }

    /// <summary>What is taken to be in hand by the time it is destroyed.</summary>
    public ValueList<string> AssumedInHand { get; init; } = [];

    /// <summary>Parts of rubber or plastic that are taken to be shielded by then.</summary>
    public ValueList<string> TakenAsShielded { get; init; } = [];

    /// <summary>Rungs that are out of the question, with why.</summary>
    public ValueList<Fault> OutOfTheQuestion { get; init; } = [];

    /// <summary>Where minutes and chances come from.</summary>
    public ValueList<string> Origins { get; init; } = [];

    /// <param name="car">The car.</param>
    /// <param name="joints">One or more of its joints that are not free yet.</param>
    /// <param name="planned">What will be done anyway.</param>
    /// <param name="ladders">Ladders for their kinds.</param>
    /// <param name="atHand">What is shielded.</param>
    /// <param name="later">What opening later costs more.</param>
    /// <param name="planner">Prices what is opened.</param>
    public static Result<OpenUpCase> Of(
        Car car, ValueList<string> joints, ValueList<Fact> planned, LadderSet ladders, AtHand atHand, Later later, IAccessPlanner planner,
        CancellationToken cancel = default)
    {
        var standing = new CarStanding(car);
        var before = PlanBefore(standing, joints, planned, planner, cancel);
        if (before.Status == PlanStatus.Impossible)
            return Result<OpenUpCase>.Bad(
                new Fault("open up", "what is planned cannot be reached", "Ask refettle reach for it, to see what stands against it."));
        var after = new CarStanding(AfterPlan.Of(car, before));
        var needs = new OpenUpNeeds(after, joints, ladders, atHand);
        var prices = new OpeningPrices(after.Car, needs.Classes, planner, cancel);
        var belief = CarBelief.Of(standing, ladders, car.Tries);
        var places = joints.Select(joint => CarBelief.PlaceOf(standing, joint)).Distinct().ToList();
        var question = new OpenUpQuestion
        {
            Openings = prices.Openings,
            Steps = prices.Steps,
            Later = later,
            Grades = belief.GradesBut(places).ToValueList(),
            Places = places.Select(place => new Place(place.Zone, place.Exposure, belief.LevelsAt(place))).ToValueList(),
            Joints = joints.Select(joint => JointOf(standing, joint, ladders, belief, places, needs, prices)).ToValueList(),
        };
        var faults = OpenUpCheck.Of(question);
        return faults.Count > 0 ? Result<OpenUpCase>.Bad(faults) : Result<OpenUpCase>.Good(new()
        {
            Question = question,
            Before = before,
            AssumedInHand = needs.Rungs.SelectMany(rung => rung.Rung.Destroys).Distinct().Order(StringComparer.Ordinal).ToValueList(),
            TakenAsShielded = atHand.Shielded.Contains(AtHand.All)
                ? needs.Rungs.SelectMany(rung => Gate.WouldNeedShield(after, after.Joints[rung.Joint], rung.Rung)).Distinct()
                    .Order(StringComparer.Ordinal).ToValueList()
                : atHand.Shielded,
            OutOfTheQuestion = needs.Rungs.Where(rung => IsForbidden(rung, prices))
                .Select(rung => new Fault($"{rung.Joint} {rung.Rung.Id}", "nothing can open its gate", "It is left out.")
                { Severity = Severity.Note }).ToValueList(),
            Origins = joints.Select(joint => ladders.For(standing.Joints[joint].Kind)[TriesSoFar.Of(car, standing.Joints[joint],
                ladders).Condition].Origin).Distinct().ToValueList(),
        });
    }

    private static Plan PlanBefore(
        CarStanding standing, ValueList<string> joints, ValueList<Fact> planned, IAccessPlanner planner, CancellationToken cancel)
    {
        var easiest = joints.Select(joint => standing.Joints[joint].Ways.MinBy(way => way.Clear.Count(fact => !standing.IsTrue(fact)))!);
        var goals = planned.Concat(easiest.SelectMany(way => way.Clear)).Distinct().Where(fact => !standing.IsTrue(fact)).ToValueList();
        var empty = new Plan { Question = new() { Goals = goals }, Status = PlanStatus.Optimal };
        return goals.Count == 0 ? empty : planner.Reach(standing.Car, new() { Goals = OneStance(standing, goals) }, cancel);
    }

    /// <summary>Stances exclude each other: of several that ways want only the first can be a goal.</summary>
    private static ValueList<Fact> OneStance(CarStanding standing, ValueList<Fact> goals)
    {
        bool IsStance(Fact fact) =>
            fact.Kind == FactKind.State && standing.States.TryGetValue(fact.Subject, out var state) && state.IsStance;
        return goals.Where(fact => !IsStance(fact)).Concat(goals.Where(IsStance).Take(1)).ToValueList();
    }

    private static StuckJoint JointOf(
        CarStanding standing, string joint, LadderSet ladders, SeizureBelief belief, List<(string, int)> places, OpenUpNeeds needs,
        OpeningPrices prices)
    {
        var sofar = TriesSoFar.Of(standing.Car, standing.Joints[joint], ladders);
        var own = needs.Rungs.Where(rung => rung.Joint == joint).ToList();
        return new()
        {
            Id = joint,
            Place = places.IndexOf(CarBelief.PlaceOf(standing, joint)),
            Levels = belief.LevelsOf(joint),
            Belief = belief.Joint(joint).ToValueList(),
            Ladders = ladders.For(standing.Joints[joint].Kind),
            Condition = sofar.Condition,
            IsSoaked = sofar.IsSoaked,
            Tried = sofar.Held,
            Forbidden = own.Where(rung => IsForbidden(rung, prices)).Select(rung => rung.Rung.Id).ToValueList(),
            Needs = own.Where(rung => !IsForbidden(rung, prices) && rung.Facts!.Count > 0)
                .ToDictionary(rung => rung.Rung.Id,
                    rung => rung.Facts!.Select(prices.NumberOf).Where(number => number >= 0).Distinct().ToValueList()),
            PerHour = standing.Car.Settings.PerHour,
        };
    }

    private static bool IsForbidden(RungNeed rung, OpeningPrices prices) => rung.Facts is null || rung.Facts.Any(prices.IsOutOfReach);
}
