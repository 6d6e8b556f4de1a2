namespace Refettle.Checks;

/// <summary>Small pieces of wording.</summary>
internal static class Words
{
    /// <summary><c>1 member</c>, <c>no members</c>, <c>3 members</c>.</summary>
    public static string Count(int count, string noun) => count switch
    {
        0 => $"no {noun}s",
        1 => $"1 {noun}",
        _ => $"{count} {noun}s",
    };
}
