using Refettle.Access;
using Refettle.Access.Derivation;

namespace Refettle.Web.Garage;

/// <summary>What the user wants to reach, and the last plan for it. Kept in this browser, so that it can
/// be followed without a network.</summary>
public sealed class CurrentPlan(string car, ServerApi server, IKeeper keeper)
{
    /// <summary>Few enough to answer on a phone within seconds; a plan that is not proven by then says so.</summary>
    private const long NodesOnDevice = 300;

    private sealed record Kept(Question Question, Plan? Plan, bool Stale, bool OnDevice);

    private static readonly TimeSpan Moment = TimeSpan.FromMilliseconds(50);

    /// <summary>What is asked now: an answer to anything else comes too late.</summary>
    private object? _asked;
    private bool _changedSince;

    private string Key => $"plan:{car}";

    public Question? Question { get; private set; }

    /// <summary>The plan for the question; null while there is none. It may be of an earlier car: see <see cref="Stale"/>.</summary>
    public Plan? Plan { get; private set; }

    /// <summary>The car's description changed since the plan was made, or what was found too weak to carry it.</summary>
    public bool Stale { get; private set; }

    /// <summary>The plan was worked out here, because the server could not be reached.</summary>
    public bool OnDevice { get; private set; }

    public bool Asking => _asked is not null;

    public ValueList<Fault> Faults { get; private set; } = [];

    public async Task LoadAsync()
    {
        if (await keeper.GetAsync<Kept>(Key) is { } kept)
            (Question, Plan, Stale, OnDevice) = (kept.Question, kept.Plan, kept.Stale, kept.OnDevice);
    }

    /// <summary>Asks the server for the least work; when it cannot be reached, works it out here.</summary>
    public async Task AskAsync(Car asked, Question question)
    {
        Plan = question == Question ? Plan : null;
        var mine = new object();
        (Question, _asked, _changedSince, Faults) = (question, mine, false, []);
        var reply = await server.ReachAsync(car, question);
        // The browser has one thread: it is given a moment to say that it looks, then it does.
        if (!reply.Reached)
            await Task.Delay(Moment);
        if (_asked != mine)
            return;
        var result = reply.Reached ? reply.Result : PlanHere(asked, question);
        (_asked, Faults) = (null, result.Faults);
        if (result.IsGood)
            (Plan, Stale, OnDevice) = (result.Value, _changedSince, !reply.Reached);
        await KeepAsync();
    }

    /// <summary>Follows another plan for the same goals.</summary>
    public Task FollowAsync(Plan plan)
    {
        (Question, _asked, Plan, Stale, OnDevice, Faults) = (plan.Question, null, plan, false, false, []);
        return KeepAsync();
    }

    public Task ClearAsync()
    {
        (Question, _asked, Plan, Stale, Faults) = (null, null, null, false, []);
        return KeepAsync();
    }

    public Task MarkStaleAsync()
    {
        (Stale, _changedSince) = (Plan is not null, true);
        return KeepAsync();
    }

    private static Result<Plan> PlanHere(Car car, Question question) => QuestionCheck.Of(car, question) is { Count: > 0 } faults
        ? Result<Plan>.Bad(faults)
        : Result<Plan>.Good(new AccessPlanner(new ReducedSolver(mostNodes: NodesOnDevice)).Reach(car, question));

    private Task KeepAsync() => keeper.PutAsync(Key, Question is null ? null : new Kept(Question, Plan, Stale, OnDevice));
}
