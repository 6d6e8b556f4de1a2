namespace Refettle.Stuck.OpenUp;

/// <summary>What to open first, as it is given away: question and answer without the tables
/// between. Minutes are expected minutes.</summary>
public sealed record OpenUpReport
{
    public required ValueList<string> OpenNow { get; init; }

    public required Choice TryFirst { get; init; }

    public required Choice BestThatOpens { get; init; }

    public required ValueList<Choice> Choices { get; init; }

    public required double ChanceToOpenLater { get; init; }

    public required double Regret { get; init; }

    public double? BreakEven { get; init; }

    public required ValueList<TurningReport> WouldChangeIt { get; init; }

    public required ValueList<TriedFirst> Joints { get; init; }

    public required ValueList<OpeningReport> Openings { get; init; }

    public required ValueList<string> AssumedInHand { get; init; }

    public required ValueList<string> TakenAsShielded { get; init; }

    public required ValueList<Fault> OutOfTheQuestion { get; init; }

    public required ValueList<string> Origins { get; init; }

    public static OpenUpReport Of(OpenUpCase made, OpenUpAnswer answer) => new()
    {
        OpenNow = answer.Best.Open,
        TryFirst = answer.TryFirst,
        BestThatOpens = answer.OpenNow,
        Choices = answer.Choices,
        ChanceToOpenLater = answer.OpensLater,
        Regret = answer.Regret,
        BreakEven = answer.BreakEven,
        WouldChangeIt = answer.Turnings
            .Select(turning => new TurningReport(turning.Joint, turning.Rung.Id, turning.Frees, turning.IfFreed, turning.IfHeld,
                turning.Saves)).ToValueList(),
        Joints = answer.Joints,
        Openings = made.Question.Openings
            .Select(opening => new OpeningReport(opening.Id, opening.Says, opening.Facts, MinutesOf(made.Question, opening))).ToValueList(),
        AssumedInHand = made.AssumedInHand,
        TakenAsShielded = made.TakenAsShielded,
        OutOfTheQuestion = made.OutOfTheQuestion,
        Origins = made.Origins,
    };

    /// <summary>A report that says only why there is none.</summary>
    public static OpenUpReport Refused(ValueList<Fault> faults) => new()
    {
        OpenNow = [],
        TryFirst = new([], 0, 0),
        BestThatOpens = new([], 0, 0),
        Choices = [],
        ChanceToOpenLater = 0,
        Regret = 0,
        WouldChangeIt = [],
        Joints = [],
        Openings = [],
        AssumedInHand = [],
        TakenAsShielded = [],
        OutOfTheQuestion = faults,
        Origins = [],
    };

    /// <summary>Minutes of an opening by itself.</summary>
    public static decimal MinutesOf(OpenUpQuestion question, Opening opening) =>
        opening.Steps.Sum(step => question.Steps[step].Takes.Value);
}

/// <summary>A try whose outcome would change it.</summary>
public sealed record TurningReport(
    string Joint, string Step, double Frees, ValueList<string> OpenIfFreed, ValueList<string> OpenIfHeld, double MinutesSaved);

/// <summary>What could be opened, with its minutes by itself.</summary>
public sealed record OpeningReport(string Id, string Says, ValueList<Fact> Facts, decimal Minutes);
