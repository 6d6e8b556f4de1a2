namespace Refettle.Browser.Tests;

/// <summary>A test that is skipped, by name, where Chromium is missing.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NeedsChromiumFactAttribute : FactAttribute
{
    public NeedsChromiumFactAttribute() => Skip = Missing;

    internal static string? Missing => File.Exists(Chromium.Program) ? null : $"{Chromium.Program} is missing: apt-get install chromium";
}

/// <summary>The same, for one that is asked several times.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NeedsChromiumTheoryAttribute : TheoryAttribute
{
    public NeedsChromiumTheoryAttribute() => Skip = NeedsChromiumFactAttribute.Missing;
}
