using Refettle.Access;

namespace Refettle.Web.Garage;

/// <summary>What the user wants to reach, and the last plan for it. Kept in this browser, so that it can be followed without a network.</summary>
public sealed class CurrentPlan(string car, ServerApi server, IKeeper keeper)
{
    private sealed record Kept(Question Question, Plan? Plan, bool Stale);

    private string Key => $"plan:{car}";

    public Question? Question { get; private set; }

    /// <summary>The plan for the question; null while there is none. It may be of an earlier car: see <see cref="Stale"/>.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The car's description changed since the plan was made.</summary>
    public bool Stale { get; private set; }

    public bool Asking { get; private set; }

    public ValueList<Fault> Faults { get; private set; } = [];

    public async Task LoadAsync()
    {
        if (await keeper.GetAsync<Kept>(Key) is { } kept)
            (Question, Plan, Stale) = (kept.Question, kept.Plan, kept.Stale);
    }

    /// <summary>Asks for the least work. Without a network the question is kept, and the last plan of another question is put away.</summary>
    public async Task AskAsync(Question question)
    {
        Plan = question == Question ? Plan : null;
        (Question, Asking, Faults) = (question, true, []);
        var reply = await server.ReachAsync(car, question);
        if (question != Question)
            return;
        Asking = false;
        Faults = reply.Faults;
        if (reply.IsGood)
            (Plan, Stale) = (reply.Value, false);
        await KeepAsync();
    }

    /// <summary>Follows another plan for the same goals.</summary>
    public Task FollowAsync(Plan plan)
    {
        (Question, Plan, Stale, Faults) = (plan.Question, plan, false, []);
        return KeepAsync();
    }

    public Task ClearAsync()
    {
        (Question, Plan, Stale, Asking, Faults) = (null, null, false, false, []);
        return KeepAsync();
    }

    public Task MarkStaleAsync()
    {
        Stale = Plan is not null;
        return KeepAsync();
    }

    private Task KeepAsync() => keeper.PutAsync(Key, Question is null ? null : new Kept(Question, Plan, Stale));
}
