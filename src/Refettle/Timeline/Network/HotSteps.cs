using Refettle.Access;
using Refettle.Access.Fire;

namespace Refettle.Timeline.Network;

/// <summary>Makes ready for the plan's own ways with heat, flame, sparks or cutting, as for tries: shielded, and in hand what they destroy.
/// That what burns near them is away the plan has seen to.</summary>
internal sealed class HotSteps(NetworkDraft draft, CarStanding standing, StripTasks strip, PartsWaits parts)
{
    public void Add()
    {
        foreach (var (chunk, task) in strip.Made.Where(made => draft[made.Task].Kind == TaskKind.Strip).ToList())
        {
            foreach (var step in chunk.Steps.Where(step => IsHot(standing, step)))
            {
                Shields.Add(draft, step.Fact.Subject, Access.Wording.NameOf(step.Fact, standing), task);
                foreach (var part in MustBeInHand(standing, step) ? step.Destroys : [])
                    Have(part, task);
            }
        }
    }

    /// <summary>What nobody knows a number or a delivery of is ordered all the same.</summary>
    private void Have(string part, string task)
    {
        if (!parts.Have(task, $"part {part}"))
            draft.Link(Deliveries.Together(draft, part, standing.Parts[part].Name), task, why: PartsWaits.InHand);
    }

    /// <summary>Whether a step opens a joint, or takes something off, on the car with something hot.</summary>
    public static bool IsHot(CarStanding standing, Step step) => DangerOf(standing, step) != Danger.None;

    /// <summary>Whether what a step destroys has to be there before: with fire, unless the owner gave leave.</summary>
    public static bool MustBeInHand(CarStanding standing, Step step) => (DangerOf(standing, step) & Danger.Fire) != 0
        && !standing.Car.LeaveForMissing.Any(leave => leave.Joint == step.Fact.Subject && leave.Rung == step.Way);

    private static Danger DangerOf(CarStanding standing, Step step) => step.Fact.Kind switch
    {
        FactKind.Open when standing.Joints[step.Fact.Subject] is { } joint =>
            joint.Ways.FirstOrDefault(way => way.Id == step.Way) is { Where: WorkPlace.OnCar } way ? HotWork.Of(way, joint) : Danger.None,
        FactKind.Off when !PlanOutline.FollowsByItself(step) => HotWork.OfTool(WayOutOf(standing, step.Fact.Subject).Tool),
        _ => Danger.None,
    };

    private static WayOut WayOutOf(CarStanding standing, string name) =>
        standing.Parts.TryGetValue(name, out var part) ? part.Out : standing.SubAssemblies[name].Out;
}
