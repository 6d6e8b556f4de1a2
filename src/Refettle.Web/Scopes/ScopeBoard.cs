using Refettle.Scope;
using Refettle.Web.Words;

namespace Refettle.Web.Scopes;

/// <summary>What the page about the scope shows: limits that go up and down in steps, jobs in and out with what each takes.</summary>
public sealed record ScopeBoard(Car Car, ScopeQuestion Question, ScopeAnswer? Answer, ScopeReasons? Reasons)
{
    private const decimal HourStep = 5;
    private const decimal MoneyStep = 100;

    /// <summary>The answer is to another question than the limits now say.</summary>
    public bool IsStale => Answer is not null && Answer.Question != Question;

    public ScopeQuestion WithHours(int steps) =>
        Question with
        {
            Hours = Stepped((Question.Hours ?? Answer?.Sum.Time)?.Value / 60, steps, HourStep) is { } hours
                ? new Minutes(hours * 60)
                : null
        };

    public ScopeQuestion WithMoney(int steps) =>
        Question with
        { Budget = Stepped((Question.Budget ?? Answer?.Sum.Money)?.Amount, steps, MoneyStep) is { } money ? new Money(money) : null };

    public string Hours => Question.Hours is { } hours ? $"{hours.Value / 60:0.#} h" : "no limit";

    public string Money => Question.Budget is { } budget ? $"{budget.Amount:0} {Car.Currency}" : "no limit";

    public string Day => Question.Until is not { } until ? "No day to meet."
        : $"{Plain.Some(until.Days, "day")} left{(until.Spells is { } spells ? $", {spells.Value / 60:0.#} h in spells" : "; no spells entered")}.";

    /// <summary>The sum in a line: what it gains and of what that is made.</summary>
    public string Sum => Answer is not { } answer ? ""
        : $"Gain {answer.Gain:0} {Car.Currency}: worth {answer.Sum.Worth:0}, money {answer.Sum.Money.Amount:0}, {answer.Sum.Time.Value / 60:0.0} h at {Question.PerHour.Amount:0.##}.";

    public IEnumerable<JobLine> In => Answer is null ? [] : Answer.Chosen.Select(id => Line(id, null));

    /// <summary>What the jobs that are in open.</summary>
    public ValueList<Fact> Opened =>
        Answer is null ? [] : Answer.Chosen.SelectMany(id => Car.Jobs.First(job => job.Id == id).Goals).Distinct().ToValueList();

    public IEnumerable<JobLine> Out => Answer is null ? [] : Answer.Left.Select(left => Line(left.Job, left.Why));

    public IEnumerable<string> First => (Reasons?.First ?? []).Select(first =>
        $"Short of {(first.Short == ScopeLimit.Time ? "time" : "money")}: {Names(first.Gone)} {(first.Gone.Count == 1 ? "goes" : "go")} first{(first.Instead.Count == 0 ? "" : $", {Names(first.Instead)} {(first.Instead.Count == 1 ? "comes" : "come")} in")}. The gain falls by {first.Loses:0} {Car.Currency}.");

    /// <summary>With a sign, as what is added.</summary>
    public string Takes(ScopeSum takes) => $"{Signed(takes.Time.Value / 60, "0.0")} h, {Signed(takes.Money.Amount, "0")} {Car.Currency}";

    public string Since(Fact? since) =>
        since is { } fact
            ? $"since {Car.Structure.Parts.FirstOrDefault(part => part.Id == fact.Subject)?.Name ?? Car.Structure.SubAssemblies.FirstOrDefault(unit => unit.Id == fact.Subject)?.Name ?? fact.Subject} is off"
            : "";

    /// <summary>What a brake says, in lines.</summary>
    public IEnumerable<string> Says(Brake brake)
    {
        if (brake.Cost is { } cost)
            yield return $"It takes {Takes(cost.Takes)} given the rest.";
        foreach (var breach in brake.Breaches)
            yield return breach.Limit switch
            {
                ScopeLimit.Time => $"That makes {breach.Needed / 60:0.0} h of {breach.Given / 60:0.0} h.",
                ScopeLimit.Money => $"That makes {breach.Needed:0} {Car.Currency} of {breach.Given:0}.",
                _ => $"Its waits alone take {breach.Needed:0.#} days of {breach.Given:0}.",
            };
        yield return brake switch
        {
            { Breaches.Count: 0 } => "It fits.",
            { Room: null } => "Nothing that may go makes room for it.",
            { Room.Count: 0 } => "Another way of opening makes room for it.",
            _ => $"It fits if {Names(brake.Room)} goes: that loses least.",
        };
    }

    private JobLine Line(string id, WhyLeft? why)
    {
        var cost = Reasons?.Costs.FirstOrDefault(cost => cost.Job == id);
        return new(Car.Jobs.First(job => job.Id == id), cost is null ? "" : Takes(cost.Takes), cost is null ? "" : Since(cost.Since),
            Word(why));
    }

    private string Names(IEnumerable<string> jobs) =>
        string.Join(", ", jobs.Select(id => Car.Jobs.FirstOrDefault(job => job.Id == id)?.Name ?? id));

    private static string Word(WhyLeft? why) => why switch
    {
        WhyLeft.NoRoom => "no room beside what brings more",
        WhyLeft.WaitsTooLong => "its waits last beyond the day",
        WhyLeft.OutOfReach => "what it needs cannot be opened",
        WhyLeft.LeftAlone => "left alone",
        WhyLeft.NotWorthIt => "brings less than it takes",
        _ => "",
    };

    /// <summary>To the next whole step up or down; none below 0.</summary>
    private static decimal? Stepped(decimal? from, int steps, decimal step) =>
        Math.Max(0, (decimal.Floor((from ?? 0) / step) + steps) * step);

    private static string Signed(decimal figure, string format) =>
        $"{(figure < 0 ? "−" : "+")}{Math.Abs(figure).ToString(format, System.Globalization.CultureInfo.InvariantCulture)}";
}

/// <summary>A job in or out.</summary>
/// <param name="Takes">What it adds given the rest; empty until that is known.</param>
/// <param name="Why">Why it is out; empty for one that is in.</param>
public sealed record JobLine(Job Job, string Takes, string Since, string Why);
