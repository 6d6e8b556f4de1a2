using System.Diagnostics.CodeAnalysis;

namespace Refettle.Logbook;

/// <summary>What can be spoken of in a car's description.</summary>
public enum ThingKind
{
    Part,
    Joint,
    State,
    Space,
    SubAssembly,
    Zone,
}

/// <summary>One thing of a car's description, written <c>joint rl-damper-lower</c>.</summary>
public readonly record struct Thing(ThingKind Kind, string Id)
{
    /// <summary>Reads <c>part x</c>, <c>joint x</c>, <c>state x</c>, <c>space x</c>, <c>sub-assembly x</c>, <c>zone x</c>.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out Thing thing)
    {
        thing = default;
        var blank = text?.IndexOf(' ') ?? -1;
        if (blank <= 0 || !TryKind(text.AsSpan(0, blank), out var kind) || !Identifier.IsValid(text![(blank + 1)..]))
            return false;
        thing = new(kind, text[(blank + 1)..]);
        return true;
    }

    public override string ToString() => $"{Word(Kind)} {Id}";

    private static string Word(ThingKind kind) => kind switch
    {
        ThingKind.Part => "part",
        ThingKind.Joint => "joint",
        ThingKind.State => "state",
        ThingKind.Space => "space",
        ThingKind.SubAssembly => "sub-assembly",
        _ => "zone",
    };

    private static bool TryKind(ReadOnlySpan<char> word, out ThingKind kind)
    {
        foreach (var candidate in Enum.GetValues<ThingKind>())
        {
            kind = candidate;
            if (word.SequenceEqual(Word(candidate)))
                return true;
        }

        kind = default;
        return false;
    }
}
