namespace Refettle.Judging;

/// <summary>A limit in words, with whose it is and where it stands.</summary>
public static class LimitWords
{
    /// <summary><c>axial play 0.5 mm or less (the maker's, manual 31-12)</c></summary>
    public static string Of(Limit limit) => $"{limit} ({Whose(limit.Origin)}{(limit.Source is { } source ? $", {source}" : "")})";

    /// <summary>The limits of one thing, a line each.</summary>
    public static IEnumerable<string> For(Car car, string thing) => car.Limits.Where(limit => limit.Of == thing).Select(Of);

    private static string Whose(Origin origin) => origin switch
    {
        Origin.Maker => "the maker's",
        Origin.CommonPractice => "common practice, no source",
        Origin.Measured => "measured",
        _ => "the owner's",
    };
}
