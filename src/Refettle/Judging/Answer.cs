namespace Refettle.Judging;

/// <summary>What is suggested for a part, beside the owner's own word, with the sums behind it.</summary>
public sealed record VerdictAnswer
{
    public required string Part { get; init; }

    public required Condition Condition { get; init; }

    /// <summary>What could be done, the suggested first; what cannot be done last.</summary>
    public required ValueList<VerdictOption> Options { get; init; }

    /// <summary>The first option; null when nothing was found of the part, or nothing can be done.</summary>
    public VerdictOption? Suggested { get; init; }

    /// <summary>The owner's own; it stays whatever is suggested.</summary>
    public Verdict? Own { get; init; }

    /// <summary>What bears on it besides: the other side, what it is sold with, what removal may break.</summary>
    public ValueList<string> Notes { get; init; } = [];

    /// <summary>The standing warning of a part there is no other of.</summary>
    public string? Warning { get; init; }
}

/// <summary>One thing that could be done with a part.</summary>
/// <param name="Sums">Each line of its cost.</param>
/// <param name="Days">Days that pass without anybody.</param>
/// <param name="Late">By how many days it misses the date; 0 when it does not or there is none.</param>
/// <param name="Cannot">Why it cannot be done; null when it can.</param>
public sealed record VerdictOption(VerdictKind Kind, DoneBy By, ValueList<Sum> Sums, decimal Days, decimal Late, string? Cannot)
{
    /// <summary>Everything in minutes, money at the owner's rate.</summary>
    public Minutes Total => Sums.Aggregate(Minutes.Zero, (all, sum) => all + sum.Minutes);

    public Money Money => new(Sums.Sum(sum => sum.Money.Amount));

    /// <summary>Own time besides getting at it: the minutes without those that stand for money.</summary>
    public Minutes Work(Money perHour) =>
        new(Math.Max(0, Sums.Where(sum => !sum.IsAccess).Sum(sum => sum.Minutes.Value - (sum.Money.Amount / perHour.Amount * 60))));
}

/// <summary>A line of a sum.</summary>
/// <param name="Money">Money in it, in the car's currency; already part of the minutes.</param>
/// <param name="Minutes">Minutes of work, with the money turned into minutes at the owner's rate.</param>
public sealed record Sum(string Says, Minutes Minutes, Money Money, Origin Origin)
{
    /// <summary>It is for getting at the part, which a plan counts by itself.</summary>
    public bool IsAccess { get; init; }
}
