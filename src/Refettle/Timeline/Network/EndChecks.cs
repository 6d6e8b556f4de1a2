using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What is checked once everything is on: bleeding, torque at ride height, settling, alignment, road test, and all of it again.
/// A check is due from when what it checks is opened until it is done with all of that closed.</summary>
/// <remarks>Order and minutes are common practice, no source: alignment only when height and worn
/// parts are right; nuts and bolts again after the first drives. The maker's manual and local law come first.</remarks>
internal sealed class EndChecks(NetworkDraft draft, CarStanding standing, RefitTasks refit)
{
    public const string Bleed = $"{Disturbed.Check}bleed";
    public const string Settle = $"{Disturbed.Check}settle";
    public const string Alignment = $"{Disturbed.Check}alignment";
    public const string RoadTest = $"{Disturbed.Check}road-test";
    public const string Again = $"{Disturbed.Check}again";

    private const int MinutesAJoint = 3;

    private static readonly Fact _drained = Fact.State("brakes-drained");

    private string? _last;

    public void Add()
    {
        var back = refit.Steps.Select(step => step.Fact).ToHashSet();
        var open = back.Where(fact => fact.Kind == FactKind.Open).Select(fact => new Disturbed(fact, []));
        var joints = open.Concat(standing.Car.Disturbed.Where(one => one.Fact.Kind == FactKind.Open && !back.Contains(one.Fact))).ToList();
        var rubber = joints.Where(one => JointOf(one).AtRideHeight).ToList();
        var underneath = joints.Where(one => IsUnderneath(JointOf(one))).ToList();
        Next(Bleed, "Bleed the brakes, pedal hard, no leak", 60,
            back.Contains(_drained) ? [] : joints.Where(one => IsToBleed(one, standing)), Needed.Helper);
        RideHeight(rubber.Where(one => !one.Since.Contains(Disturbed.RideHeight)).ToList());
        Next(Settle, "Roll it, bounce it, a short careful drive where that is allowed: it settles", 30, rubber);
        Next(Alignment, "Align: tyre pressures, load and ride height first", 120, rubber);
        Next(RoadTest, "Road test, longer and longer: fluid levels and pedal first; look for leaks in between", 60, underneath);
        Next(Again, "Wheel nuts and all that was torqued once more after the first 80 to 160 km", 45, underneath);
    }

    /// <summary>Hydraulics that were opened, and neither bled nor filled since.</summary>
    public static bool IsToBleed(Disturbed one, CarStanding standing) =>
        one.Fact.Kind == FactKind.Open && IsHydraulic(standing.Joints[one.Fact.Subject], standing.Parts.GetValueOrDefault)
        && !one.Since.Contains(Bleed) && !one.Since.Contains(_drained.ToString());

    private void RideHeight(List<Disturbed> rubber)
    {
        var way = standing.States.GetValueOrDefault(Car.AtRideHeight)?.Ways.MinBy(way => way.Open.Value);
        var minutes = rubber.Sum(one => MinutesAJoint * JointOf(one).Count) + (way?.Open.Value ?? 0);
        Next(Disturbed.RideHeight,
            $"Wheels on blocks at ride height: torque {(rubber.Count == 1 ? "1 joint" : $"{rubber.Count} joints")} with bonded rubber, then down", (int)Math.Ceiling(minutes), rubber);
        if (rubber.Count > 0)
            draft.Change(Disturbed.RideHeight, task => task with { Cautions = way?.Cautions ?? [] });
    }

    /// <param name="about">What it checks. Nothing is added when all of that is seen to.</param>
    private void Next(string id, string says, int minutes, IEnumerable<Disturbed> about, params ValueList<string> uses)
    {
        var unseen = about.Where(one => !one.Since.Contains(id)).Select(one => one.Fact).ToValueList();
        if (unseen.Count == 0)
            return;
        var task = draft.Add(new()
        {
            Id = id,
            Kind = TaskKind.Check,
            Says = says,
            Takes = new(minutes),
            Origin = Origin.CommonPractice,
            Uses = uses,
            Unseen = unseen
        });
        foreach (var before in _last is null ? refit.All.ToList() : [_last])
            draft.Link(before, task);
        _last = task;
    }

    private Joint JointOf(Disturbed one) => standing.Joints[one.Fact.Subject];

    /// <summary>Fluid runs out of it when it is opened, and air gets in.</summary>
    public static bool IsHydraulic(Joint joint, Func<string, Part?> part) => joint.Kind is JointKind.Pipe or JointKind.Hose
        && joint.Holds.Any(name => part(name)?.Hazards.Contains(Hazard.BrakeFluid) == true);

    /// <summary>Something of the running gear: at a corner, or worked at from below.</summary>
    private bool IsUnderneath(Joint joint) => joint.Holds.Select(part => standing.Parts[part]).Where(part => !part.Fixed)
        .Any(part => part.Zone.StartsWith("corner-", StringComparison.Ordinal)
            || (standing.Zones.TryGetValue(part.Zone, out var zone) && zone.Posture == Access.Ordering.Workplace.Under));
}
