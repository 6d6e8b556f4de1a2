using Refettle.Access;
using Refettle.Logbook;

namespace Refettle.Web.Steps;

/// <summary>The marks that say what of a plan is done.</summary>
public static class StepMarks
{
    /// <summary>What to write to mark a step done.</summary>
    public static Happening Done(Step step, bool isStance) =>
        isStance ? new StanceTaken(step.Fact.Subject) : new StepDone(step.Fact, step.Way.Length == 0 ? null : step.Way, null);

    /// <summary>What to write to take the mark back; null where there is nothing to take back: a stance that the car began in.</summary>
    public static Happening? Back(CarHistory history, Fact fact, bool isStance) =>
        Last(history,
            happening => isStance
                ? happening is StanceTaken taken && taken.Stance == fact.Subject
                : happening is StepDone done && done.Fact == fact) is { } mark
            ? new Struck(mark.Entry.Id, null)
            : isStance ? null : new StepReversed(fact, null);

    /// <summary>The newest mark that still counts, whoever made it.</summary>
    public static HistoryLine? Last(CarHistory history) => Last(history, happening => happening is StepDone or StanceTaken);

    private static HistoryLine? Last(CarHistory history, Func<Happening?, bool> isMark) =>
        history.Lines.LastOrDefault(line => line.Standing == Standing.InForce && isMark(line.Happening));
}
