using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Timeline.Network;

/// <summary>Soaks, shields, deliveries and gates around the tries at stuck joints.</summary>
internal sealed class TryTasks(NetworkDraft draft, CarStanding standing, StripTasks strip, PartsWaits parts)
{
    /// <summary>Tries with fire that are needed less often than this are left to the day on which the mild ones have failed.</summary>
    public const double WorthPlanning = 0.25;

    private readonly List<(StuckJoint Stuck, string Why)> _refused = [];

    public void Add(IEnumerable<StuckJoint> joints)
    {
        foreach (var stuck in joints)
        {
            var task = $"try.{stuck.Joint.Id}";
            Soak(stuck, task);
            var needsFire = stuck.Hot.Count > 0 && stuck.Hold(stuck.Mild) >= WorthPlanning;
            if (needsFire && FireGate.Link(draft, standing, strip, stuck.Joint, stuck.Hot, task) is { Count: > 0 } closed)
                Refuse(stuck, task, closed);
            else if (needsFire)
                WithFire(stuck, task);
            else
                Mildly(stuck, task);
        }

        TellRefused();
    }

    private void Mildly(StuckJoint stuck, string task)
    {
        draft.Change(task,
            old => old with { Rungs = stuck.Mild, Takes = stuck.Expected(0, stuck.Mild.Count), Cautions = Cautions(old, stuck.Mild) });
        MakeReady(stuck, task);
    }

    private void Soak(StuckJoint stuck, string task)
    {
        if (stuck.Soak is not { } soak)
            return;
        var apply = draft.Add(new()
        {
            Id = $"soak.{stuck.Joint.Id}",
            Kind = TaskKind.Soak,
            Says = $"{soak.Says}: {NameOf(stuck)}",
            Takes = soak.Takes,
            Origin = Origin.CommonPractice,
            Joint = stuck.Joint.Id,
            Rungs = [soak],
            Stance = draft[task].Stance,
            Place = draft[task].Place,
            Posture = draft[task].Posture,
            Cautions = soak.Cautions,
        });

        // Outside, where the weather gets in, the can reaches too; elsewhere what is in the way comes off first.
        var isOutside =
            (stuck.Joint.Exposure ?? (standing.Zones.TryGetValue(draft[task].Place ?? "", out var zone) ? zone.Exposure : 0)) >= 3;
        foreach (var before in draft.DirectlyBefore(task).Where(before => !isOutside || draft[before].Kind == TaskKind.Stance).ToList())
            draft.Link(before, apply);
        draft.Link(apply, draft.Add(Wait($"wait.soak.{stuck.Joint.Id}", $"Soaking: {NameOf(stuck)}", soak.Waits, Origin.CommonPractice)));
        draft.Link($"wait.soak.{stuck.Joint.Id}", task);
    }

    private void WithFire(StuckJoint stuck, string task)
    {
        var (mild, hot) = (stuck.Mild, stuck.Hot);
        if (mild.Count > 0)
        {
            var ease = draft.Add(draft[task] with
            {
                Id = $"ease.{stuck.Joint.Id}",
                Steps = [],
                Rungs = mild,
                Takes = stuck.Expected(0, mild.Count),
                Cautions = Cautions(draft[task], mild),
            });
            foreach (var before in draft.DirectlyBefore(task).ToList())
                draft.Link(before, ease);
            draft.Link(ease, task);
            MakeReady(stuck, ease);
        }

        draft.Change(task, old => old with
        {
            Rungs = hot,
            Takes = stuck.Expected(mild.Count, stuck.Row.Count),
            Chance = stuck.Hold(mild),
            Cautions = Cautions(old, hot),
        });
        MakeReady(stuck, task);
    }

    /// <summary>Rubber and plastic are shielded before heat, and what is destroyed is in hand before it is.</summary>
    private void MakeReady(StuckJoint stuck, string task)
    {
        if (draft[task].Rungs.Any(rung => rung.Danger != Danger.None))
            Shields.Add(draft, stuck.Joint.Id, NameOf(stuck), task);
        var unknown = draft[task].Rungs.SelectMany(rung => rung.Destroys).Distinct().Where(thing => !IsKnown(stuck, thing, task)).ToList();
        if (unknown.Count > 0)
            draft.Link(Deliveries.Add(draft, stuck.Joint.Id, $"{string.Join(", ", unknown)} for {NameOf(stuck)}"), task,
                why: PartsWaits.InHand);
    }

    /// <summary>Whether the shelf knows of all places that a ladder's word means here; the try waits for what is not in hand.</summary>
    private bool IsKnown(StuckJoint stuck, string thing, string task) =>
        TryPlaces.Of(stuck.Joint, thing, standing.Parts).ToList() is { Count: > 0 } places
        && places.Select(place => parts.Have(task, place)).ToList().TrueForAll(known => known);

    private void Refuse(StuckJoint stuck, string task, ValueList<ClosedTry> closed)
    {
        Mildly(stuck, task);
        draft.Change(task, old => stuck.Mild.Count > 0 ? old with { Closed = closed }
            : old with
            {
                Closed = closed,
                Takes = StripTasks.Whole(old.Steps.Sum(step => step.Cost.Open.Value)),
                Says = $"{old.Says}: not as planned, its gate is closed"
            });
        _refused.Add((stuck,
            string.Join("; ",
                closed.SelectMany(gate => gate.Reasons).Select(reason => $"{reason.Cause}: {Some(reason.Things)}").Distinct())));
    }

    /// <summary>Joints that the same things keep from fire are told of together.</summary>
    private void TellRefused()
    {
        foreach (var group in _refused.GroupBy(one => one.Why))
        {
            var joints = group.Select(one => one.Stuck.Joint.Id).ToList();
            draft.Notes.Add(new(joints.Count == 1 ? $"joint {joints[0]}" : $"joints {string.Join(", ", joints)}",
                $"in up to {group.Max(one => one.Stuck.Hold(one.Stuck.Mild)):0%} of cases it takes flame, sparks or a cut, and the gate is closed in this plan ({group.Key})",
                $"Take what burns off first, or make it safe: name it among the goals{Safe()}.")
            { Severity = Severity.Note });
        }
    }

    private string Safe()
    {
        var known = FireGate.MadeSafe.Where(standing.States.ContainsKey).Select(state => $"state({state})").ToList();
        return known.Count == 0 ? "" : $", such as {string.Join(", ", known)}";
    }

    private static string Some(ValueList<string> things) =>
        $"{string.Join(", ", things.Take(3))}{(things.Count > 3 ? $" and {things.Count - 3} more" : "")}";

    public static WorkTask Wait(string id, string says, Minutes minutes, Origin origin, Promiser promised = Promiser.Nobody) => new()
    { Id = id, Kind = TaskKind.Wait, Says = says, Takes = minutes, Origin = origin, Pace = Pace.WallClock, Promised = promised };

    /// <summary>The name of the wait for what is at a shop.</summary>
    public static string AtShop(string about) => $"wait.shop.{about}";

    private static ValueList<string> Cautions(WorkTask task, ValueList<Rung> rungs) =>
        task.Cautions.Concat(rungs.SelectMany(rung => rung.Cautions)).Distinct().ToValueList();

    private string NameOf(StuckJoint stuck) => Access.Wording.JointName(stuck.Joint, standing);
}
