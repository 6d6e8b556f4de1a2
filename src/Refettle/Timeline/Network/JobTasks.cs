namespace Refettle.Timeline.Network;

/// <summary>The own work of jobs and their waits, between what opens the way for them and what closes it again.</summary>
internal sealed class JobTasks(NetworkDraft draft, StripTasks strip, RefitTasks refit)
{
    public void Add(Job job)
    {
        var work = draft.Add(new()
        {
            Id = $"job.{job.Id}",
            Kind = TaskKind.Work,
            Says = job.Name,
            Takes = StripTasks.Whole(job.Work.Value),
            Origin = job.Origin,
            Jobs = [job.Id],
            For = job.Goals,
        });
        foreach (var wait in job.Waits.Where(wait => wait.Kind == WaitKind.Delivery))
            draft.Link(Deliveries.Add(draft, job.Id, wait.Says, wait), work);
        var opened = job.Goals.Select(strip.TaskOf).OfType<string>().Distinct().ToList();
        var first = SendOut(job, opened, work);
        foreach (var open in opened)
            draft.Link(open, first);
        Close(job, Cure(job, work));
    }

    /// <summary>Packed, listed and sent, waited for, counted when it is back; each shop after the other.</summary>
    private string SendOut(Job job, List<string> opened, string work)
    {
        var first = work;
        foreach (var wait in job.Waits.Where(wait => wait.Kind == WaitKind.OutsideShop).Reverse())
        {
            var send = draft.Add(Task($"send.{job.Id}", TaskKind.Send, $"Pack, count, photograph and send out: {wait.Says}", 30, job));
            var away = draft.Add(TryTasks.Wait(TryTasks.AtShop(job.Id), $"At the shop: {wait.Says}", Deliveries.Days(wait.Days),
                wait.Origin, Promiser.Shop) with
            { Jobs = [job.Id], AtWorst = Deliveries.AtWorst(wait) });
            var back = draft.Add(Task($"return.{job.Id}", TaskKind.Return, $"Count and look over what comes back: {wait.Says}", 20, job));
            draft.Link(send, away);
            draft.Link(away, back);
            draft.Link(back, first);
            foreach (var open in opened)
                draft.Link(open, send);
            first = send;
        }

        return first;
    }

    private string Cure(Job job, string work)
    {
        var last = work;
        foreach (var wait in job.Waits.Where(wait => wait.Kind == WaitKind.Cure))
        {
            var cures = draft.Add(TryTasks.Wait($"wait.cure.{job.Id}", wait.Says, Deliveries.Days(wait.Days), wait.Origin) with
            { Jobs = [job.Id], AtWorst = Deliveries.AtWorst(wait) });
            draft.Link(last, cures);
            last = cures;
        }

        return last;
    }

    private void Close(Job job, string last)
    {
        foreach (var task in job.Goals.SelectMany(refit.TasksOf).Distinct())
            draft.Link(last, task);
    }

    private static WorkTask Task(string id, TaskKind kind, string says, int minutes, Job job) =>
        new() { Id = id, Kind = kind, Says = says, Takes = new(minutes), Origin = Origin.CommonPractice, Jobs = [job.Id] };
}
