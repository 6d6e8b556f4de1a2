namespace Refettle.Web.Capture;

/// <summary>What someone who does a step is looking at.</summary>
public static class Near
{
    /// <summary><c>joint x</c>, <c>part x</c>; null for states and spaces.</summary>
    public static string? Of(Fact step) => step.Kind switch
    {
        FactKind.Open => $"joint {step.Subject}",
        FactKind.Off or FactKind.Free => $"part {step.Subject}",
        _ => null,
    };
}
