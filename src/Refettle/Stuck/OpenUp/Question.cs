namespace Refettle.Stuck.OpenUp;

/// <summary>Which accesses to open before a set of stuck joints is tried. First some accesses are
/// opened (none, perhaps) and every joint gets what can be tried then; once it is seen which came free, more may be opened, later;
/// then what still holds is finished.</summary>
public sealed record OpenUpQuestion
{
    /// <summary>What may be opened, 30 at most.</summary>
    public required ValueList<Opening> Openings { get; init; }

    /// <summary>The steps that accesses consist of; one that several share is done and paid once.</summary>
    public required ValueList<OpeningStep> Steps { get; init; }

    public Later Later { get; init; } = Later.CommonPractice;

    /// <summary>The weight of each of the car's grades, 0 to 4, from all tries in other places; it need not add up to 1.</summary>
    public required ValueList<double> Grades { get; init; }

    /// <summary>The places that the joints lie in.</summary>
    public required ValueList<Place> Places { get; init; }

    /// <summary>One or more joints.</summary>
    public required ValueList<StuckJoint> Joints { get; init; }
}

/// <summary>Something that can be opened to get at joints with more than what reaches them now.</summary>
/// <param name="Facts">What becomes true.</param>
/// <param name="Steps">Which of the question's steps it takes.</param>
public sealed record Opening(string Id, string Says, ValueList<Fact> Facts, ValueList<int> Steps);

/// <summary>One piece of opening.</summary>
/// <param name="Takes">Minutes to open and to close again, what is destroyed included.</param>
public sealed record OpeningStep(string Says, Minutes Takes);

/// <summary>What it costs to open later rather than now.</summary>
/// <param name="Once">Minutes for laying out tools and getting at it a second time.</param>
/// <param name="Factor">What the steps' minutes are multiplied by, 1 or more.</param>
public sealed record Later(Minutes Once, double Factor)
{
    /// <summary>A quarter of an hour, and the steps take as long as before. Common practice, no source.</summary>
    public static Later CommonPractice { get; } = new(new(15), 1);
}

/// <summary>A zone and exposure that joints share: they have one hidden level in common.</summary>
/// <param name="Levels">For each grade the weights of the place's levels 0 to 4, tries so far taken in.</param>
public sealed record Place(string Zone, int Exposure, ValueList<ValueList<double>> Levels);

/// <summary>One joint of the question.</summary>
public sealed record StuckJoint
{
    public required string Id { get; init; }

    /// <summary>The number of its place.</summary>
    public int Place { get; init; }

    /// <summary>For each level of the place the chances of the joint's own levels, its own tries taken in.</summary>
    public required ValueList<ValueList<double>> Levels { get; init; }

    public required IReadOnlyDictionary<JointCondition, Ladder> Ladders { get; init; }

    public JointCondition Condition { get; init; }

    public bool IsSoaked { get; init; }

    /// <summary>Rungs that failed already.</summary>
    public ValueList<string> Tried { get; init; } = [];

    /// <summary>Rungs that are out of the question whatever is opened.</summary>
    public ValueList<string> Forbidden { get; init; } = [];

    /// <summary>For each rung the numbers of the accesses that it needs, all of them; a rung that is not named needs none.</summary>
    public IReadOnlyDictionary<string, ValueList<int>> Needs { get; init; } = new Dictionary<string, ValueList<int>>();

    public Money PerHour { get; init; } = new(30);

    /// <summary>The chances of its own levels 0 to 4 by themselves.</summary>
    public required ValueList<double> Belief { get; init; }
}
