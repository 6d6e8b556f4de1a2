using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What the steps destroy or use up is here before it goes on: parts one by one, and all that goes onto joints.</summary>
internal sealed class NewParts(NetworkDraft draft, CarStanding standing, StripTasks strip, RefitTasks refit, PartsWaits parts)
{
    public void Add()
    {
        foreach (var (part, task) in strip.Made
            .SelectMany(made => made.Chunk.Steps.SelectMany(step => step.Destroys).Select(part => (part, made.Task)))
            .DistinctBy(pair => pair.part).ToList())
        {
            foreach (var back in Around(part).Append(refit.MirrorOf(task)).Distinct().ToList())
                parts.Take(back, $"part {part}", "new, as it was destroyed",
                    () => Deliveries.Together(draft, part, standing.Parts[part].Name));
        }

        foreach (var (task, joint) in refit.All.Where(id => draft[id].Kind == TaskKind.Refit)
            .SelectMany(id => Closed(id).Select(joint => (id, joint))).ToList())
        {
            if (parts.IsAsked || joint.SingleUse)
                parts.Take(task, $"joint {joint.Id}", "new fasteners", Fasteners);
        }
    }

    private IEnumerable<Joint> Closed(string task) =>
        draft[task].Steps.Where(step => step.Fact.Kind == FactKind.Open).Select(step => standing.Joints[step.Fact.Subject]);

    /// <summary>What fits a part, and its neighbours, for which it has to be there.</summary>
    private IEnumerable<string> Around(string part) =>
        standing.JointsOf(part).SelectMany(joint => joint.Holds).Distinct().SelectMany(held => refit.TasksOf(Fact.Off(held)));

    private string Fasteners() =>
        draft.Has("wait.delivery.fasteners")
            ? "wait.delivery.fasteners"
            : Deliveries.Add(draft, "fasteners", "single-use fasteners, clips and seals");
}
