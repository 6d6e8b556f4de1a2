using Refettle.Access;
using Refettle.Judging;
using Refettle.Timeline;

namespace Refettle.Discovery;

/// <summary>What is to be done to a car: the chosen jobs, and what verdicts ask for.</summary>
/// <param name="Car">The car; a verdict that no job of it covers is a job of its own, that must be done.</param>
/// <param name="Renew">Parts that are replaced or substituted.</param>
internal sealed record Undertaking(Car Car, ValueList<Fact> Goals, ValueList<string> Renew, ValueList<SuggestedVerdict> Suggested)
{
    /// <param name="answers">What is suggested for the parts of which something was found or decided; the
    /// owner's own word comes before it.</param>
    public static Undertaking Of(Car car, ValueList<VerdictAnswer> answers)
    {
        var standing = new CarStanding(car);
        var asked = answers.Select(answer => (answer, kind: answer.Own?.Kind ?? answer.Suggested?.Kind))
            .Where(one => one.kind is not (null or VerdictKind.Keep)).ToList();
        var goals = asked.Select(one => Fact.Off(one.answer.Part)).Where(goal => QuestionCheck.CanBeAsked(standing, [goal]));
        return new(
            car with
            {
                Jobs = [.. car.Jobs,
                .. asked.Where(one => !IsCovered(car, one.answer.Part)).Select(one => AsJob(standing, one.answer))]
            },
            ChosenGoals(standing).Concat(goals).Distinct().ToValueList(),
            asked.Where(one => one.kind is VerdictKind.Replace or VerdictKind.Substitute).Select(one => one.answer.Part).ToValueList(),
            asked.Where(one => one.answer.Own is null).Select(one => new SuggestedVerdict(one.answer.Part, one.kind!.Value)).ToValueList());
    }

    public static ValueList<Fact> ChosenGoals(CarStanding standing) =>
        ChosenJobs.Goals(ChosenJobs.Of(standing.Car), []).Where(goal => QuestionCheck.CanBeAsked(standing, [goal])).ToValueList();

    /// <summary>An open job opens up this part: what is done to it is that job's.</summary>
    private static bool IsCovered(Car car, string part) =>
        car.Jobs.Any(job => !car.JobsDone.Contains(job.Id) && (job.Goals.Contains(Fact.Off(part)) || job.Goals.Contains(Fact.Free(part))));

    private static Job AsJob(CarStanding standing, VerdictAnswer answer)
    {
        var (kind, by) = answer.Own is { } own ? (own.Kind, own.By) : (answer.Suggested!.Kind, answer.Suggested.By);
        var option = answer.Options.FirstOrDefault(one => one.Kind == kind && one.By == by);
        return new()
        {
            Id = $"verdict-{answer.Part}",
            Name = $"{kind} {answer.Part}",
            Wish = Wish.Must,
            Goals = QuestionCheck.CanBeAsked(standing, [Fact.Off(answer.Part)]) ? [Fact.Off(answer.Part)] : [],
            Work = option?.Work(standing.Car.Settings.PerHour) ?? Minutes.Zero,
            Parts = option?.Money ?? default,
            Waits = option is { Days: > 0 }
                ? [new(by == DoneBy.OutsideShop ? WaitKind.OutsideShop : WaitKind.Delivery, answer.Part, option.Days, null,
                    Origin.CommonPractice)]
                : [],
            Origin = Origin.CommonPractice,
        };
    }
}
