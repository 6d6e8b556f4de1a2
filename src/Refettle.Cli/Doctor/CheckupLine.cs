namespace Refettle.Cli.Doctor;

/// <summary>How a part of the set-up is.</summary>
internal enum Health
{
    Good,

    /// <summary>It works; something is worth knowing.</summary>
    Mind,

    /// <summary>Something will not work until it is mended.</summary>
    Wrong,
}

/// <summary>What was found on looking at one part of the set-up.</summary>
/// <param name="What">Which part.</param>
/// <param name="Found">How it is, in words.</param>
/// <param name="Mend">What to do; empty when nothing.</param>
internal sealed record CheckupLine(string What, Health Health, string Found, string Mend = "");
