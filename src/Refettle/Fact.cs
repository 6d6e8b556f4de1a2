using System.Diagnostics.CodeAnalysis;

namespace Refettle;

/// <summary>What a fact says of its subject.</summary>
public enum FactKind
{
    /// <summary>A part or sub-assembly is no longer on the car.</summary>
    Off,

    /// <summary>A part is off and separated from everything.</summary>
    Free,

    /// <summary>A joint is undone.</summary>
    Open,

    /// <summary>The car is in a state: battery off, on stands …</summary>
    State,

    /// <summary>A space can be reached.</summary>
    Reach,
}

/// <summary>A statement about the car that work can make true, written <c>off(rear-axle)</c>.</summary>
/// <param name="Kind">What is said.</param>
/// <param name="Subject">The identifier of the part, sub-assembly, joint, state or space.</param>
public readonly record struct Fact(FactKind Kind, string Subject) : IComparable<Fact>
{
    public static Fact Off(string part) => new(FactKind.Off, part);

    public static Fact Free(string part) => new(FactKind.Free, part);

    public static Fact Open(string joint) => new(FactKind.Open, joint);

    public static Fact State(string state) => new(FactKind.State, state);

    public static Fact Reach(string space) => new(FactKind.Reach, space);

    /// <summary>Reads <c>kind(subject)</c>; blanks around the words do not matter, nor does the case of the kind.</summary>
    public static bool TryParse([NotNullWhen(true)] string? text, out Fact fact) =>
        TryParseTemplate(text, out fact) && Identifier.IsValid(fact.Subject);

    /// <summary>Reads a fact of a kit, whose subject may have names in braces: <c>off({p}drum)</c>.</summary>
    public static bool TryParseTemplate([NotNullWhen(true)] string? text, out Fact fact)
    {
        fact = default;
        var trimmed = text.AsSpan().Trim();
        var open = trimmed.IndexOf('(');
        if (open <= 0 || !trimmed.EndsWith(")") || !TryKind(trimmed[..open].Trim(), out var kind))
            return false;
        fact = new(kind, trimmed[(open + 1)..^1].Trim().ToString());
        return Identifier.IsTemplate(fact.Subject);
    }

    public int CompareTo(Fact other) =>
        Kind != other.Kind ? Kind.CompareTo(other.Kind) : string.CompareOrdinal(Subject, other.Subject);

    public override string ToString() => $"{Word(Kind)}({Subject})";

    public static bool operator <(Fact left, Fact right) => left.CompareTo(right) < 0;

    public static bool operator >(Fact left, Fact right) => left.CompareTo(right) > 0;

    public static bool operator <=(Fact left, Fact right) => left.CompareTo(right) <= 0;

    public static bool operator >=(Fact left, Fact right) => left.CompareTo(right) >= 0;

    private static string Word(FactKind kind) => kind switch
    {
        FactKind.Off => "off",
        FactKind.Free => "free",
        FactKind.Open => "open",
        FactKind.State => "state",
        _ => "reach",
    };

    private static readonly FactKind[] Kinds = Enum.GetValues<FactKind>();

    private static bool TryKind(ReadOnlySpan<char> word, out FactKind kind)
    {
        foreach (var candidate in Kinds)
        {
            kind = candidate;
            if (word.Equals(Word(candidate), StringComparison.OrdinalIgnoreCase))
                return true;
        }

        kind = default;
        return false;
    }
}
