namespace Refettle.Access;

/// <summary>Whether a question can be asked of a car.</summary>
public static class QuestionCheck
{
    /// <summary>All faults: goals that name nothing on the car, fixed parts, two stances at once, parts both wanted and forbidden.</summary>
    public static ValueList<Fault> Of(Car car, Question question) => throw new NotImplementedException();
}
