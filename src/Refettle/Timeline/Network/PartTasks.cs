using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Work on parts, by the owner's verdicts, while they are off: clean, derust, coat,
/// rebuild, send out, or get another one.</summary>
/// <remarks>Minutes without an estimate are common practice, no source, and wide: people who timed
/// themselves report ten times as much.</remarks>
internal sealed class PartTasks(NetworkDraft draft, CarStanding standing, StripTasks strip, RefitTasks refit, PartsWaits parts)
{
    private const decimal DefaultShopDays = 28;

    private const int RebuildMinutes = 60;

    public void Add(Verdict verdict)
    {
        if (!standing.Parts.TryGetValue(verdict.Part, out var part))
            return;
        var opened = strip.TaskOf(Fact.Free(part.Id)) ?? strip.TaskOf(Fact.Off(part.Id));
        var closed = refit.TasksOf(Fact.Off(part.Id)).ToList();
        if (closed.Count == 0)
        {
            if (verdict.Kind != VerdictKind.Keep)
                draft.Notes.Add(new($"part {part.Id}", $"it is to be {Word(verdict.Kind)}, and nothing in this timeline takes it off",
                    $"Add off({part.Id}) to the goals.")
                { Severity = Severity.Note });
            return;
        }

        var last = Row(verdict, part, Estimate(part), opened);
        foreach (var back in last is null ? [] : closed)
            draft.Link(last!, back);
        foreach (var back in verdict.Kind == VerdictKind.Replace ? closed : [])
            parts.Take(back, $"part {part.Id}", "it is replaced",
                () => Deliveries.Together(draft, part.Id, part.Name, Estimate(part)?.LeadDays));
    }

    private PartEstimate? Estimate(Part part) => standing.Car.Estimates.FirstOrDefault(estimate => estimate.Part == part.Id);

    private static string Word(VerdictKind kind) => kind switch
    {
        VerdictKind.Refurbish => "refurbished",
        VerdictKind.Replace => "replaced",
        _ => "substituted",
    };

    /// <returns>What has to be over before it goes back.</returns>
    private string? Row(Verdict verdict, Part part, PartEstimate? estimate, string? opened) => verdict switch
    {
        { Kind: VerdictKind.Keep } => Work($"clean.{part.Id}", $"Clean and look over: {part.Name}", 15, Origin.CommonPractice, opened),
        { Kind: VerdictKind.Refurbish, By: DoneBy.OutsideShop } => Shop(part, estimate, opened),
        { Kind: VerdictKind.Refurbish } => Refurbish(part, estimate, opened),
        { Kind: VerdictKind.Replace } => null,
        _ => FitUp(part, estimate),
    };

    private string FitUp(Part part, PartEstimate? estimate)
    {
        var fit = Work($"fit-up.{part.Id}", $"Make the substitute fit: {part.Name}", estimate?.SubstituteWork?.Value ?? RebuildMinutes,
            estimate?.SubstituteWork is null ? Origin.Default : Origin.User, null);
        parts.Take(fit, $"part {part.Id}", "a substitute",
            () => Deliveries.Together(draft, part.Id, $"substitute for {part.Name}", estimate?.LeadDays));
        return fit;
    }

    private string Shop(Part part, PartEstimate? estimate, string? opened)
    {
        if (parts.Back(part.Id) is { } back)
            return Return(part, back);
        var send = Work($"send.{part.Id}", $"Pack, count, photograph and send out: {part.Name}", 30, Origin.CommonPractice, opened,
            TaskKind.Send);
        var away = draft.Add(TryTasks.Wait(TryTasks.AtShop(part.Id), $"At the shop: {part.Name}",
            Deliveries.Days(estimate?.OutsideDays ?? DefaultShopDays), estimate?.OutsideDays is null ? Origin.Default : Origin.User,
            Promiser.Shop));
        draft.Link(send, away);
        return Return(part, away);
    }

    private string Return(Part part, string away) =>
        Work($"return.{part.Id}", $"Count and look over what comes back: {part.Name}", 20, Origin.CommonPractice, away, TaskKind.Return);

    /// <summary>What is at a shop without a word on what becomes of it is waited for all the same.</summary>
    public void AddAway()
    {
        foreach (var away in parts.Unawaited)
        {
            if (!standing.IsTrue(Fact.Off(away.Part)))
                draft.Notes.Add(new($"part {away.Part}", $"it is at {away.Work.From}, and by the log it is still on the car",
                    $"Mark what is done: refettle done off({away.Part}).")
                { Severity = Severity.Note });
            var closed = refit.TasksOf(Fact.Off(away.Part)).ToList();
            var back = closed.Count == 0 ? null : Return(standing.Parts[away.Part], parts.Back(away.Part)!);
            foreach (var task in closed)
                draft.Link(back!, task);
        }
    }

    /// <summary>Weathered metal, and what its owner chose coats for, is derusted and coated; then what
    /// there is to rebuild is rebuilt.</summary>
    private string Refurbish(Part part, PartEstimate? estimate, string? opened)
    {
        var last = Work($"clean.{part.Id}", $"Clean: {part.Name}", 30, Origin.CommonPractice, opened);
        var exposure = standing.Zones.TryGetValue(part.Zone, out var zone) ? zone.Exposure : 0;
        if (standing.Car.Coating.Of(part.Id) is not null
            || (exposure >= 3 && !part.Hazards.Any(hazard => hazard is Hazard.Rubber or Hazard.Plastic)))
        {
            var bare = Work($"derust.{part.Id}", $"Derust to bright metal, degrease: {part.Name}", 60, Origin.CommonPractice, last);
            draft.Change(bare, task => task with { Bares = part.Id });
            last = new CoatTasks(draft, standing.Car, parts).Add(part, bare);
        }

        return Work($"rebuild.{part.Id}", $"Rebuild, measure, grease: {part.Name}", estimate?.Work?.Value ?? RebuildMinutes,
            estimate?.Work is null ? Origin.Default : Origin.User, last);
    }

    private string Work(string id, string says, decimal minutes, Origin origin, string? after, TaskKind kind = TaskKind.Work)
    {
        var task = draft.Add(new()
        {
            Id = id,
            Kind = kind,
            Says = says,
            Takes = StripTasks.Whole(minutes),
            Origin = origin,
            Place = Access.Ordering.Workplace.Bench,
            Posture = Access.Ordering.Workplace.Bench,
            Uses = kind == TaskKind.Work ? [Needed.Bench] : [],
        });
        if (after is not null)
            draft.Link(after, task);
        return task;
    }
}
