namespace Refettle.Browser.Tests;

/// <summary>A test that is skipped, by name, where Chromium is missing.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class NeedsChromiumFactAttribute : FactAttribute
{
    public NeedsChromiumFactAttribute() => Skip = File.Exists(Bench.Chromium) ? null : $"{Bench.Chromium} is missing: apt-get install chromium";
}
