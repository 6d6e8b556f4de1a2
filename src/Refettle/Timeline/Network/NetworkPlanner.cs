using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Derives the tasks of a car: what takes it apart, what is done meanwhile, what puts it
/// together, what is checked at the end.</summary>
public static class NetworkPlanner
{
    public static TaskNetwork Of(NetworkQuestion question)
    {
        var standing = new CarStanding(question.Car);
        var draft = new NetworkDraft();
        var stuck = StuckJoints.Of(question, standing);
        var strip = new StripTasks(draft, standing, question.Plan, stuck);
        strip.Add();
        var needs = draft.Links.ToList();
        var parts = new PartsWaits(draft, question.Parts);
        new TryTasks(draft, standing, strip, parts).Add(stuck.Values);
        var refit = new RefitTasks(draft, standing, strip);
        refit.Add(needs);
        KeepAway(draft, standing, refit);
        WeldGate.Close(draft, standing, strip, refit);
        RefitGate.Close(draft, standing, refit);
        new HotSteps(draft, standing, strip, parts).Add();
        foreach (var job in question.Jobs)
            new JobTasks(draft, strip, refit).Add(job);
        var work = new PartTasks(draft, standing, strip, refit, parts);
        foreach (var verdict in question.Car.Verdicts)
            work.Add(verdict);
        work.AddAway();
        new NewParts(draft, standing, strip, refit, parts).Add();
        foreach (var trial in question.Parts?.Trials ?? [])
            TrialFit(draft, strip, refit, trial);
        Repair(draft, standing, strip, refit);
        new HandingIn(draft, standing, refit).Add();
        new EndChecks(draft, standing, refit).Add();
        new LicensedWork(draft).Add();
        var terms = new OwnersTerms(draft, question.Car);
        terms.AddTasks();
        terms.Equip();
        new Moves(draft, standing, question.Moves).Add();
        terms.Apply();
        Serve(draft, question.Plan.Question.Goals, strip);
        return draft.Build();
    }

    /// <summary>What burns stays off until the last try with fire is over.</summary>
    private static void KeepAway(NetworkDraft draft, CarStanding standing, RefitTasks refit)
    {
        var hot = draft.Tasks.Where(task => task.Kind == TaskKind.Try && task.Rungs.Any(rung => (rung.Danger & Danger.Fire) != 0))
            .Select(task => task.Id).ToList();
        foreach (var back in refit.All
            .Where(id => draft[id].Kind == TaskKind.Refit && draft[id].Steps.Any(step => FireGate.IsSafeguard(standing, step))).ToList())
        {
            foreach (var task in hot)
                draft.TryLink(task, back, "no fire once it is back");
        }
    }

    /// <summary>While the old one is off, where this timeline takes it off; else it is laid beside it.</summary>
    private static void TrialFit(NetworkDraft draft, StripTasks strip, RefitTasks refit, PartTrial trial)
    {
        var task = draft.Add(new()
        {
            Id = $"trial-fit.{trial.Id}",
            Kind = TaskKind.TrialFit,
            Says = trial.Says,
            Takes = new(15),
            Origin = Origin.CommonPractice,
            Latest = trial.By.PlusDays(1).AtMidnight(),
        });
        foreach (var part in trial.Parts)
        {
            if (strip.TaskOf(Fact.Off(part)) is { } off)
                draft.Link(off, task, why: "the old one is off");
            foreach (var back in refit.TasksOf(Fact.Off(part)))
                draft.Link(task, back, why: "tried on before it is fitted");
        }
    }

    private static void Repair(NetworkDraft draft, CarStanding standing, StripTasks strip, RefitTasks refit)
    {
        var repair = new BodyRepair(draft, standing);
        foreach (var (chunk, task) in strip.Made.Where(made => BodyRepair.Cuts(standing, made.Chunk.Lead)).ToList())
        {
            repair.Before(chunk.Lead, task);
            repair.After(chunk.Lead, refit.MirrorOf(task));
        }
    }

    /// <summary>Each task knows the goals that it serves: those that need something it does, at any remove.</summary>
    private static void Serve(NetworkDraft draft, ValueList<Fact> goals, StripTasks strip)
    {
        foreach (var goal in goals)
        {
            if (strip.TaskOf(goal) is not { } task)
                continue;
            foreach (var id in draft.Before(task).Append(task).Where(id => !draft[id].For.Contains(goal)).ToList())
                draft.Change(id, one => one with { For = [.. one.For, goal] });
        }
    }
}
