using Refettle.Access;

namespace Refettle.Web.Steps;

/// <summary>Steps that nobody has to do.</summary>
public static class Following
{
    /// <summary>A part is free, and a space within reach, by what was done before: there is nothing to mark.</summary>
    public static bool FollowsByItself(this Step step) => step.Fact.Kind is FactKind.Free or FactKind.Reach;
}
