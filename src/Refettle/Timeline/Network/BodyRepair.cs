using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>What goes before and after a cut into the body: brace and gaps before it, gaps and seal after the weld.</summary>
/// <remarks>Order and minutes are common practice, no source; the maker's method and licensed welders come first.</remarks>
internal sealed class BodyRepair(NetworkDraft draft, CarStanding standing)
{
    private const int SealDries = 24 * 60;

    /// <summary>Whether a step cuts a weld between the body and something else.</summary>
    public static bool Cuts(CarStanding standing, Step step) => step.Fact.Kind == FactKind.Open
        && standing.Joints[step.Fact.Subject] is { Kind: JointKind.Weld } joint && joint.Holds.Any(part => standing.Parts[part].Fixed);

    /// <param name="cut">The task that cuts the weld.</param>
    public void Before(Step step, string cut)
    {
        var (id, name) = About(step);
        var around = Around(cut).ToList();
        var gaps = Task($"gaps-before.{id}", TaskKind.Gaps,
            $"Measure and note the panel gaps and the opening's diagonals around {name}, before anything near it comes off", 20, cut);
        draft.Change(gaps, task => task with { Stance = null, Posture = null });
        var brace = Task($"brace.{id}", TaskKind.Brace, $"Brace the opening across {name} before anything is cut", 40, cut);
        foreach (var task in around)
            draft.Link(gaps, task, why: "gaps are noted while it is on");
        foreach (var before in draft.DirectlyBefore(cut).ToList())
            draft.Link(before, brace);
        draft.Link(gaps, brace);
        draft.Link(brace, cut, why: "braced before it is cut");
    }

    /// <param name="weld">The task that welds it again; what waits for that waits for the seal.</param>
    public void After(Step step, string weld)
    {
        var (id, name) = About(step);
        var later = draft.DirectlyAfter(weld).ToList();
        var gaps = Task($"gaps-after.{id}", TaskKind.Gaps,
            $"Measure diagonals and, with the panels hung for a trial, gaps around {name} before the brace comes out: as noted, or cut the tacks", 30, weld);
        var free = Task($"unbrace.{id}", TaskKind.Brace, $"Take the brace out at {name}", 20, weld);
        var seal = Task($"seal.{id}", TaskKind.Seal, $"Prime, seal the seams and wax the cavity of {name}", 45, weld);
        var dries = draft.Add(TryTasks.Wait($"wait.seal.{id}", $"Seam sealer and wax dry: {name}", new(SealDries), Origin.CommonPractice));
        foreach (var (before, after) in new[] { (weld, gaps), (gaps, free), (free, seal), (seal, dries) })
            draft.Link(before, after);
        foreach (var after in later)
            draft.Link(dries, after);
        draft.Change(weld, task => task with
        {
            Cautions = [.. task.Cautions,
                "Welding: fuel, brake pipes with fluid in them and airbags near it off or made safe, battery off, carpets and sealer out, extinguisher, fire watch afterwards."],
        });
    }

    /// <summary>What comes off before the cut, in its zone or one next to it.</summary>
    private IEnumerable<string> Around(string cut)
    {
        var near = standing.Zones.TryGetValue(draft[cut].Place ?? "", out var zone) ? zone.Near.Append(zone.Id).ToList() : [];
        return draft.Before(cut).Where(id => draft[id].Kind is TaskKind.Strip && (near.Count == 0 || near.Contains(draft[id].Place ?? "")));
    }

    private (string Id, string Name) About(Step step) =>
        (step.Fact.Subject, Access.Wording.JointName(standing.Joints[step.Fact.Subject], standing));

    private string Task(string id, TaskKind kind, string says, int minutes, string beside) => draft.Add(new()
    {
        Id = id,
        Kind = kind,
        Says = says,
        Takes = new(minutes),
        Origin = Origin.CommonPractice,
        Stance = draft[beside].Stance,
        Place = draft[beside].Place,
        Posture = draft[beside].Posture,
    });
}
