namespace Refettle;

/// <summary>How much the owner wants a job. A later value is wanted more.</summary>
public enum Wish
{
    /// <summary>Done when it hardly costs anything: it counts with the least of its worth.</summary>
    Maybe,

    /// <summary>Done when it is worth what it takes.</summary>
    Want,

    /// <summary>Done whatever it takes.</summary>
    Must,
}

/// <summary>Something the owner may want done: what has to be opened for it, its own work, what it is worth.</summary>
public sealed record Job
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public Wish Wish { get; init; } = Wish.Want;

    /// <summary>What has to be true of the car while it is done: a part free, a space within reach;
    /// none where nothing is in the way.</summary>
    public ValueList<Fact> Goals { get; init; } = [];

    /// <summary>Jobs without which it makes no sense: they are chosen with it.</summary>
    public ValueList<string> With { get; init; } = [];

    /// <summary>What it is worth to have it done; null when nothing was said, which counts as nothing.</summary>
    public Worth? Worth { get; init; }

    /// <summary>Its own work, without opening and closing.</summary>
    public Minutes Work { get; init; }

    /// <summary>Parts, material and outside work, in the car's currency.</summary>
    public Money Parts { get; init; }

    /// <summary>Time that passes without anybody, one wait after the other.</summary>
    public ValueList<JobWait> Waits { get; init; } = [];

    /// <summary>Origin of work, parts and waits.</summary>
    public Origin Origin { get; init; } = Origin.User;
}

/// <summary>In what a worth is counted.</summary>
public enum WorthUnit
{
    /// <summary>What a buyer would pay more, in the car's currency.</summary>
    Money,

    /// <summary>The owner's own points.</summary>
    Points,
}

/// <summary>What a job is worth, with its range.</summary>
/// <param name="Least">0 or more.</param>
/// <param name="Likely">Not below the least.</param>
/// <param name="Most">Not below the likely.</param>
public sealed record Worth(decimal Least, decimal Likely, decimal Most, WorthUnit In, Origin Origin)
{
    public override string ToString() =>
        $"{Likely:0.##}{(Least < Most ? $" ({Least:0.##} to {Most:0.##})" : "")}{(In == WorthUnit.Points ? " points" : "")}";
}

/// <summary>When in a job time passes without anybody.</summary>
public enum WaitKind
{
    /// <summary>Before the work can begin.</summary>
    Delivery,

    /// <summary>Between taking it off and having it back.</summary>
    OutsideShop,

    /// <summary>After the work, before it can be closed up.</summary>
    Cure,
}

/// <summary>Time of a job that passes without anybody.</summary>
/// <param name="Days">As expected, 0 or more; parts of days count.</param>
/// <param name="MostDays">At worst; null when nothing is known.</param>
public sealed record JobWait(WaitKind Kind, string Says, decimal Days, decimal? MostDays, Origin Origin);

/// <summary>What the owner has to spend on the car. Null is no limit.</summary>
/// <param name="Budget">Money for parts, material and outside work, in the car's currency.</param>
/// <param name="Hours">The owner's own time.</param>
/// <param name="By">The day it has to be ready.</param>
/// <param name="PerPoint">Money that a point is worth; null where all worths are in one unit.</param>
public sealed record Means(Money? Budget, Minutes? Hours, DateOnly? By, Money? PerPoint)
{
    public static Means NoLimit { get; } = new(null, null, null, null);
}
