
namespace Refettle.Stuck;

/// <summary>A soak that works by itself while other things are done.</summary>
/// <param name="Since">When it began.</param>
/// <param name="Ready">When the joint may be tried.</param>
public sealed record SoakClock(string Joint, string Rung, DateTimeOffset Since, DateTimeOffset Ready)
{
    public bool IsReady(DateTimeOffset now) => now >= Ready;

    /// <summary>What is left of it: never more than the whole soak, whatever clock began it.</summary>
    public TimeSpan Left(DateTimeOffset now) => Ready <= now ? TimeSpan.Zero : Ready - (now < Since ? Since : now);

    /// <summary>Said when its begin lies ahead of the clock, so that nobody knows how long it has soaked; null when it does not.</summary>
    public string? Doubt(DateTimeOffset now) => Since > now + ClocksApart.Borne
        ? $"its begin lies {ClocksApart.Words(Since - now)} ahead of this clock: go by your own watch"
        : null;

    /// <summary>The soak on the ladder of a joint as it is now; null when it has none.</summary>
    public static Rung? RungFor(Car car, Joint joint, LadderSet ladders) =>
        ladders.For(joint.Kind).GetValueOrDefault(TriesSoFar.Of(car, joint, ladders).Condition)?.Rungs.FirstOrDefault(rung => rung.IsSoak);

    /// <summary>All soaks that run, the first to be ready first. They run beside each other.</summary>
    public static ValueList<SoakClock> All(Car car, LadderSet ladders) => car.Soaking
        .Select(soaking => (soaking,
            rung: car.Structure.Joints.FirstOrDefault(joint => joint.Id == soaking.Joint) is { } joint
                ? ladders.Rung(joint.Kind, soaking.Rung)
                : null))
        .Where(pair => pair.rung is not null)
        .Select(pair => new SoakClock(pair.soaking.Joint, pair.soaking.Rung, pair.soaking.Since,
            pair.soaking.Since.AddMinutes((double)pair.rung!.Waits.Value)))
        .OrderBy(clock => clock.Ready).ThenBy(clock => clock.Joint, StringComparer.Ordinal).ToValueList();
}

/// <summary>Tools that are borrowed or hired, and so not always there.</summary>
internal static class ToolHire
{
    /// <summary>The days on which the tool of a rung is there, when today is none of them.</summary>
    public static IEnumerable<ClosedBy> NotHere(Car car, Rung rung, DateTimeOffset? now)
    {
        if (now is not { } at
            || car.Calendar.Facilities
                .FirstOrDefault(one => one.Kind == FacilityKind.Tool
                    && string.Equals(one.Name, rung.Tool, StringComparison.OrdinalIgnoreCase)) is not { } tool)
            yield break;
        var today = NodaTime.LocalDate.FromDateTime(at.DateTime);
        if (today < tool.From || today > tool.Until)
            yield return new("the tool is not here today",
                [$"{tool.Name}: {(tool.From is { } from ? $"from {from:uuuu-MM-dd} " : "")}{(tool.Until is { } until ? $"until {until:uuuu-MM-dd}" : "")}".Trim()]);
    }
}
