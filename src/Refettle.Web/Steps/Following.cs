using Refettle.Access;

namespace Refettle.Web.Steps;

/// <summary>Steps that nobody has to do.</summary>
public static class Following
{
    /// <summary>A part is free or comes along with its sub-assembly, and a space is within reach, by
    /// what was done before: there is nothing to mark.</summary>
    public static bool FollowsByItself(this Step step) => PlanOutline.FollowsByItself(step);
}
