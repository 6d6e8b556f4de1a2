using Refettle.Stuck.OpenUp;

namespace Refettle.Cli.Forms;

/// <summary>What to open first, as <c>--json</c> gives it. Minutes are expected minutes.</summary>
internal sealed record OpenUpForm
{
    public required ValueList<string> OpenNow { get; init; }

    public required Choice TryFirst { get; init; }

    public required Choice BestThatOpens { get; init; }

    public required ValueList<Choice> Choices { get; init; }

    public required double ChanceToOpenLater { get; init; }

    public required double Regret { get; init; }

    public double? BreakEven { get; init; }

    public required ValueList<TurningForm> WouldChangeIt { get; init; }

    public required ValueList<TriedFirst> Joints { get; init; }

    public required ValueList<OpeningForm> Openings { get; init; }

    public required ValueList<string> AssumedInHand { get; init; }

    public required ValueList<string> TakenAsShielded { get; init; }

    public required ValueList<Fault> OutOfTheQuestion { get; init; }

    public required ValueList<string> Origins { get; init; }

    public static OpenUpForm Of(OpenUpCase made, OpenUpAnswer answer) => new()
    {
        OpenNow = answer.Best.Open,
        TryFirst = answer.TryFirst,
        BestThatOpens = answer.OpenNow,
        Choices = answer.Choices,
        ChanceToOpenLater = answer.OpensLater,
        Regret = answer.Regret,
        BreakEven = answer.BreakEven,
        WouldChangeIt = answer.Turnings.Select(turning => new TurningForm(turning.Joint, turning.Rung.Id, turning.Frees, turning.IfFreed, turning.IfHeld, turning.Saves)).ToValueList(),
        Joints = answer.Joints,
        Openings = made.Question.Openings.Select(opening => new OpeningForm(opening.Id, opening.Says, opening.Facts, MinutesOf(made.Question, opening))).ToValueList(),
        AssumedInHand = made.AssumedInHand,
        TakenAsShielded = made.TakenAsShielded,
        OutOfTheQuestion = made.OutOfTheQuestion,
        Origins = made.Origins,
    };

    /// <summary>Minutes of an opening by itself.</summary>
    public static decimal MinutesOf(OpenUpQuestion question, Opening opening) => opening.Steps.Sum(step => question.Steps[step].Takes.Value);
}

internal sealed record TurningForm(string Joint, string Step, double Frees, ValueList<string> OpenIfFreed, ValueList<string> OpenIfHeld, double MinutesSaved);

internal sealed record OpeningForm(string Id, string Says, ValueList<Fact> Facts, decimal Minutes);
