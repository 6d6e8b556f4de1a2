using Refettle.Stuck;
using Refettle.Web.Words;

namespace Refettle.Web.Judging;

/// <summary>What the card of a stuck joint shows.</summary>
public sealed class StuckCard
{
    private static readonly string[] Levels = ["By hand", "Light", "Firm", "Hard", "Solid"];

    private readonly DateTimeOffset _now;

    /// <param name="car">The car.</param>
    /// <param name="joint">A joint of it.</param>
    /// <param name="ladders">Ladders for its kind.</param>
    /// <param name="atHand">What is ready.</param>
    /// <param name="now">The time.</param>
    public StuckCard(CarLookup car, Joint joint, LadderSet ladders, AtHand atHand, DateTimeOffset now)
    {
        _now = now;
        HasLadder = ladders.For(joint.Kind).ContainsKey(TriesSoFar.Of(car.Car, joint, ladders).Condition)
            || TriesSoFar.Of(car.Car, joint, ladders).Condition == JointCondition.Freed;
        Answer = HasLadder ? StuckAdvice.Of(car.Car, joint.Id, ladders, atHand, now) : null;
        Destroyed = ladders.For(joint.Kind).Values.SelectMany(ladder => ladder.Rungs).SelectMany(rung => rung.Destroys).Distinct()
            .Order(StringComparer.Ordinal).ToValueList();
        Soak = SoakClock.RungFor(car.Car, joint, ladders);
    }

    public bool HasLadder { get; }

    /// <summary>Null when no ladder fits.</summary>
    public StuckAnswer? Answer { get; }

    /// <summary>What tries at it destroy, and so must be in hand.</summary>
    public ValueList<string> Destroyed { get; }

    /// <summary>The soak that could be begun; null when there is none.</summary>
    public Rung? Soak { get; }

    public Rung? Next => Answer?.Next?.Best;

    /// <summary>How rusted it is believed to be: each level with what exposure alone says and what is believed
    /// after the tries, in hundredths.</summary>
    public IEnumerable<(string Word, int Before, int Now)> Belief => Answer is not { } answer ? [] : Levels
        .Select((word, level) => (word, (int)Math.Round(answer.Before[level] * 100), (int)Math.Round(answer.Now[level] * 100)));

    /// <summary>The belief in a sentence.</summary>
    public string Sentence => Answer is not { } answer ? "" :
        $"Most likely {Levels[Array.IndexOf([.. answer.Now], answer.Now.Max())].ToLowerInvariant()} ({answer.Now.Max():0%}); by exposure alone {Levels[Array.IndexOf([.. answer.Before], answer.Before.Max())].ToLowerInvariant()}.";

    /// <summary>What can come of the next try, worst last.</summary>
    public IEnumerable<(string Word, JointCondition? Becomes)> Outcomes => Next is not { } rung ? [] :
    [
        ("It held", null), ("Came free", JointCondition.Freed),
        .. rung.Mishaps.Select(mishap => (Word(mishap.Becomes), (JointCondition?)mishap.Becomes)),
    ];

    /// <summary>The running soak in a sentence; null when none runs.</summary>
    public string? Clock => Answer?.Soak is not { } clock ? null : clock.IsReady(_now)
        ? "It has soaked long enough: try it now."
        : clock.Doubt(_now) is { } doubt ? $"It soaks; {doubt}."
        : $"It soaks. Ready in {Plain.Time(new((decimal)clock.Left(_now).TotalMinutes))}; do something else until then.";

    public bool IsSoaked => Answer?.Soak?.IsReady(_now) == true;

    public static string Word(JointCondition condition) => condition switch
    {
        JointCondition.Sound => "Still tight",
        JointCondition.TurnsWithSleeve => "Turns with its sleeve",
        JointCondition.SnappedProud => "Snapped, a stub stands out",
        JointCondition.SnappedFlush => "Snapped level or below",
        JointCondition.ThreadGone => "Thread gone",
        JointCondition.Freed => "Came free",
        _ => condition.ToString(),
    };

    /// <summary>What closes a gate, in a line.</summary>
    public static string Why(ClosedBy reason)
    {
        const int most = 4;
        return $"{reason.Cause}: {string.Join(", ", reason.Things.Take(most))}{(reason.Things.Count > most ? $" and {reason.Things.Count - most} more" : "")}";
    }
}
