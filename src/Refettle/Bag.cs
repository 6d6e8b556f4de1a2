namespace Refettle;

/// <summary>A bag, box or tin of small parts with a short code on it.</summary>
public sealed record Bag
{
    /// <summary>See <see cref="BagCode"/>.</summary>
    public required string Code { get; init; }

    /// <summary>What was put into it since it was last empty, a line each time.</summary>
    public ValueList<string> Holds { get; init; } = [];

    /// <summary>The things it belongs to, each as <c>joint x</c>, <c>part x</c> … A step belongs to the joint it
    /// opens or the part it takes off.</summary>
    public ValueList<string> For { get; init; } = [];

    /// <summary>Where it lies; null while nothing was said.</summary>
    public string? Place { get; init; }

    /// <summary>All that was in it is used again. Its code may be given to the next.</summary>
    public bool IsEmpty { get; init; }
}

/// <summary>The code on a bag: short enough to say and to write on it with a pen.</summary>
public static class BagCode
{
    public const int MaxLength = 8;

    /// <summary>Up to eight small letters, digits and hyphens, beginning with a letter or digit; shown in capitals.</summary>
    public static bool IsValid(string? code) =>
        code is { Length: > 0 and <= MaxLength } && Identifier.IsValid(code) && code.All(c => c is not ('.' or '_'));

    /// <summary>As it is kept: <c> A-7 </c> is <c>a-7</c>, <c>014</c> is <c>14</c>.</summary>
    public static string Read(string written)
    {
        var code = written.Trim().ToLowerInvariant();
        return code.Length > 0 && code.All(char.IsAsciiDigit) ? code.TrimStart('0') is { Length: > 0 } number ? number : "0" : code;
    }

    /// <summary>As it is shown and printed.</summary>
    public static string Shown(string code) => code.ToUpperInvariant();

    /// <summary>One more than the greatest number that is on a bag, empty ones too: an old label is then never read as a new one.</summary>
    public static string Next(IEnumerable<Bag> bags)
    {
        var greatest = bags.Select(bag => int.TryParse(bag.Code, out var number) ? number : 0).DefaultIfEmpty().Max();
        return $"{greatest + 1}";
    }
}
