namespace Refettle.Storage.Tests;

/// <summary>A test of what only Linux has; elsewhere it is told as skipped.</summary>
internal sealed class LinuxFactAttribute : FactAttribute
{
    public LinuxFactAttribute() => Skip = OperatingSystem.IsLinux() ? null : "only on Linux";
}
