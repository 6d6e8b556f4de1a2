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
        var gaps = Task($"gaps-before.{id}", TaskKind.Gaps, $"Measure and note the panel gaps around {name}, car level", 15, cut);
        var brace = Task($"brace.{id}", TaskKind.Brace, $"Brace the opening across {name} before anything is cut", 40, cut);
        draft.Link(gaps, brace);
        draft.Link(brace, cut, why: "braced before it is cut");
    }

    /// <param name="weld">The task that welds it again; what waits for that waits for the seal.</param>
    public void After(Step step, string weld)
    {
        var (id, name) = About(step);
        var later = draft.DirectlyAfter(weld).ToList();
        var gaps = Task($"gaps-after.{id}", TaskKind.Gaps, $"Measure the panel gaps around {name} again before the brace comes out: as noted, or cut the tacks", 15, weld);
        var free = Task($"unbrace.{id}", TaskKind.Brace, $"Take the brace out at {name}", 20, weld);
        var seal = Task($"seal.{id}", TaskKind.Seal, $"Prime, seal the seams and wax the cavity of {name}", 45, weld);
        var dries = draft.Add(TryTasks.Wait($"wait.seal.{id}", $"Seam sealer and wax dry: {name}", new(SealDries), Origin.CommonPractice));
        foreach (var (before, after) in new[] { (weld, gaps), (gaps, free), (free, seal), (seal, dries) })
            draft.Link(before, after);
        foreach (var after in later)
            draft.Link(dries, after);
        draft.Change(weld, task => task with
        {
            Cautions = [.. task.Cautions, "Welding: fuel, brake pipes with fluid in them and airbags near it off or made safe, battery off, carpets and sealer out, extinguisher, fire watch afterwards."],
        });
    }

    private (string Id, string Name) About(Step step) => (step.Fact.Subject, Access.Wording.JointName(standing.Joints[step.Fact.Subject], standing));

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
