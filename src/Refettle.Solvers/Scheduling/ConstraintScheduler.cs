using Refettle.Timeline;
using Refettle.Timeline.Scheduling;

namespace Refettle.Solvers.Scheduling;

/// <summary>Schedules with everything there is: a first schedule at once, breeding, then CP-SAT, which improves and proves; the finish
/// first, then each aim with what comes before it held.</summary>
/// <param name="clock">Measures the time that the limits allow; the system's when not said.</param>
public sealed class ConstraintScheduler(TimeProvider? clock = null) : IScheduler
{
    public ScheduleAnswer Solve(
        ScheduleQuestion question, ScheduleLimits limits, IProgress<ScheduleAnswer>? progress = null, CancellationToken cancel = default)
    {
        if (question.Project.Activities.Count == 0)
            return new FirstScheduler().Solve(question, limits, progress, cancel);
        var effort = new Effort(limits, clock ?? TimeProvider.System, cancel);
        var search = new FinishSearch(question, effort, progress);
        search.Run(question.Later.Count > 0 ? 0.5 : 1);
        var answer = search.Answer();
        if (answer.Status == ScheduleStatus.Impossible)
            answer = answer with
            { Clash = new Clashes(question.Project, effort, Math.Max(limits.Time.TotalSeconds, 2 * effort.SecondsPassed)).Find() };
        return answer.Schedule is null || question.Later.Count == 0 ? answer : Aimed(question, search.Builder, effort, answer, progress);
    }

    private static ScheduleAnswer Aimed(
        ScheduleQuestion question, Builder builder, Effort effort, ScheduleAnswer answer, IProgress<ScheduleAnswer>? progress)
    {
        ScheduleAnswer With(Schedule schedule, bool isProven) => answer with
        {
            Schedule = schedule,
            Costs = question.Later.Select(aim => aim.Cost(schedule)).ToValueList(),
            Status = isProven ? ScheduleStatus.Optimal : ScheduleStatus.Feasible,
        };
        var (best, areAimsProven) = new AimSearch(question, builder, effort)
            .Run(answer.Schedule!, schedule => progress?.Report(With(schedule, false)));
        return With(best, areAimsProven && answer.IsFinishProven);
    }
}

/// <summary>What is left of the time, and of the work where the answer is to come again.</summary>
internal sealed class Effort(ScheduleLimits limits, TimeProvider clock, CancellationToken cancel)
{
    private readonly long _begin = clock.GetTimestamp();

    public ScheduleLimits Limits => limits;

    public CancellationToken Cancel => cancel;

    public double SecondsPassed => clock.GetElapsedTime(_begin).TotalSeconds;

    public double SecondsLeft => Math.Max(0, limits.Time.TotalSeconds - SecondsPassed);

    /// <summary>A token that is also cancelled when so many seconds have passed since the beginning.</summary>
    public CancellationTokenSource Until(double seconds) => Until(() => SecondsPassed >= seconds);

    /// <summary>A token that is also cancelled when something is so, which is asked again and again, or with another.</summary>
    public CancellationTokenSource Until(Func<bool> isSo, CancellationToken other = default)
    {
        var source = CancellationTokenSource.CreateLinkedTokenSource(cancel, other);
        Timer? timer = null;
        timer = new Timer(_ =>
        {
            if (!isSo())
                return;
            End(source);
            timer?.Dispose();
        }, null, 0, 5);
        source.Token.Register(timer.Dispose);
        return source;
    }

    /// <summary>Lets all workers run beside each other and waits for them. Each has a thread of its own: the pool has as many as there are
    /// cores, and on them the ticks are heard that end a search; searches there went on for up to two seconds after their time.</summary>
    public void Together(Action<int> run) => Task.WaitAll([.. Enumerable.Range(0, limits.Workers).Select(worker =>
        Task.Factory.StartNew(() => run(worker), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default))]);

    /// <summary>A tick can still be under way when the search has ended by itself and put its token away.</summary>
    private static void End(CancellationTokenSource source)
    {
        try
        {
            source.Cancel();
        }
        catch (ObjectDisposedException)
        {
            // The search is over, which is all that was wanted.
        }
    }

    public bool IsOver => SecondsLeft <= 0 || cancel.IsCancellationRequested;
}
