namespace Refettle.Judging;

/// <summary>Whether a suggestion keeps to its rules; seen from the answer and the car alone.</summary>
public static class VerdictCheck
{
    public static ValueList<Fault> Of(Car car, VerdictQuestion question, VerdictAnswer answer)
    {
        var faults = new List<Fault>();
        var part = car.Structure.Parts.First(one => one.Id == answer.Part);
        void Say(string found) => faults.Add(new($"verdict {answer.Part}", found, ""));
        if (answer.Suggested is { } suggested)
        {
            if (suggested.Cannot is not null)
                Say("what cannot be done is suggested");
            if (suggested.Kind == VerdictKind.Keep && answer.Condition.Worst == Severeness.Bad)
                Say("a bad part is to be kept");
            if (suggested.Kind == VerdictKind.Replace && part.Scarcity == Scarcity.Unique
                && car.Estimates.All(one => one.Part != part.Id || one.Price is null))
                Say("a unique part is to be replaced");
            if (answer.Options
                .Any(other => other.Cannot is null
                    && (other.Late < suggested.Late || (other.Late == suggested.Late && other.Total < suggested.Total))))
                Say("another option is better");
        }

        if (answer.Options
            .Any(option => question.DaysLeft is { } left && option.Cannot is null && option.Late != Math.Max(0, option.Days - left)))
            Say("an option's lateness is wrong");
        if (part.Scarcity == Scarcity.Unique && answer.Warning is null)
            Say("the standing warning of a unique part is missing");
        if (answer.Own != car.Verdicts.FirstOrDefault(verdict => verdict.Part == part.Id))
            Say("the owner's own verdict is not shown");
        return faults.ToValueList();
    }
}
