using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What is checked once everything is on: bleeding, torque at ride height, settling, alignment, road test, and all of it again.</summary>
/// <remarks>Order and minutes are common practice, no source: alignment only when height and worn parts are right; nuts and bolts again after
/// the first drives. The maker's manual and local law come first.</remarks>
internal sealed class EndChecks(NetworkDraft draft, CarStanding standing, RefitTasks refit)
{
    private const int MinutesAJoint = 3;

    private string? _last;

    public void Add()
    {
        var steps = refit.Steps.ToList();
        var joints = steps.Where(step => step.Fact.Kind == FactKind.Open).Select(step => standing.Joints[step.Fact.Subject]).ToList();
        HandIn(steps);
        if (joints.Exists(joint => IsHydraulic(joint, standing)) && !steps.Any(step => step.Fact == Fact.State("brakes-drained")))
            Next("check.bleed", "Bleed the brakes, pedal hard, no leak", 60, Needed.Helper);
        if (joints.Where(joint => joint.AtRideHeight).ToList() is { Count: > 0 } rubber)
            RideHeight(rubber);
        if (joints.Exists(joint => joint.AtRideHeight))
        {
            Next("check.settle", "Roll it, bounce it, a short careful drive where that is allowed: it settles", 30);
            Next("check.alignment", "Align: tyre pressures, load and ride height first", 120);
        }

        if (joints.Exists(joint => IsUnderneath(joint)))
        {
            Next("check.road-test", "Road test, longer and longer: fluid levels and pedal first; look for leaks in between", 60);
            Next("check.again", "Wheel nuts and all that was torqued once more after the first 80 to 160 km", 45);
        }
    }

    private void RideHeight(List<Joint> rubber)
    {
        var way = standing.States.GetValueOrDefault(Car.AtRideHeight)?.Ways.MinBy(way => way.Open.Value);
        var minutes = rubber.Sum(joint => MinutesAJoint * joint.Count) + (way?.Open.Value ?? 0);
        Next("check.ride-height", $"Wheels on blocks at ride height: torque {(rubber.Count == 1 ? "1 joint" : $"{rubber.Count} joints")} with bonded rubber, then down", (int)Math.Ceiling(minutes));
        draft.Change("check.ride-height", task => task with { Cautions = way?.Cautions ?? [] });
    }

    private void HandIn(List<Step> steps)
    {
        var found = new WasteOf(draft, standing, steps);
        if (found.All() is not { Count: > 0 } waste)
            return;
        var minutes = waste.All(one => one.Kind == WasteKind.Refrigerant) ? 5 : 45;
        var task = draft.Add(Task("hand-in", $"Hand in, each kind apart: {string.Join("; ", waste.Select(one => one.Says))}", minutes) with
        {
            Kind = TaskKind.HandIn,
            Waste = waste,
            Cautions = waste.Select(one => $"{one.Says}: {one.Keep}").ToValueList(),
        });
        foreach (var source in found.Tasks())
            draft.Link(source, task);
    }

    private void Next(string id, string says, int minutes, params ValueList<string> uses)
    {
        var task = draft.Add(Task(id, says, minutes) with { Uses = uses });
        foreach (var before in _last is null ? refit.All.ToList() : [_last])
            draft.Link(before, task);
        _last = task;
    }

    private static WorkTask Task(string id, string says, int minutes) =>
        new() { Id = id, Kind = TaskKind.Check, Says = says, Takes = new(minutes), Origin = Origin.CommonPractice };

    /// <summary>Fluid runs out of it when it is opened, and air gets in.</summary>
    public static bool IsHydraulic(Joint joint, CarStanding standing) => joint.Kind is JointKind.Pipe or JointKind.Hose
        && joint.Holds.Any(part => standing.Parts[part].Hazards.Contains(Hazard.BrakeFluid));

    /// <summary>Something of the running gear: at a corner, or worked at from below.</summary>
    private bool IsUnderneath(Joint joint) => joint.Holds.Select(part => standing.Parts[part]).Where(part => !part.Fixed)
        .Any(part => part.Zone.StartsWith("corner-", StringComparison.Ordinal) || (standing.Zones.TryGetValue(part.Zone, out var zone) && zone.Posture == "under"));
}
