using NodaTime;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>Replays what hangs in the spray corner when, by the entries alone: without the planner's occasions and rooms.</summary>
internal static class CornerCheck
{
    /// <summary>Whether one can be worked in when a session begins and is there until its coat is dry.</summary>
    public static bool IsThere(Car car, SpraySession session)
    {
        var (corners, dry) = (Corners(car), Dry(car, session.Product, session.At, null));
        if (corners.Count > 1)
            return session.Parts.All(part => corners.Exists(corner => corner.Id == part.Corner && Serves(corner)));
        return corners.Count == 0 || corners.Exists(Serves);

        bool Serves(Facility corner) =>
            (corner.From ?? session.At.Date) <= session.At.Date && (corner.Until ?? dry.Date) >= dry.Date
            && HasSpell(car.Calendar, corner, session.At);
    }

    /// <summary>Whenever something goes on: all that is in there then, what dries from before with it.</summary>
    public static IEnumerable<string> Crowds(Car car, CoatingPlan plan)
    {
        var before = PartProgress.All(car.Coating).Where(part => part.Last is not null)
            .Select(part => (part.Part, part.Last!.At, Dry: Dry(car, part.Last.Product, part.Last.At, part.Last.Celsius))).ToList();
        var planned = plan.Sessions
            .SelectMany(session => session.Parts.Select(part => (part.Part, session.At, Dry: Dry(car, session.Product, session.At, null))))
            .ToList();
        foreach (var time in plan.Sessions.Select(session => session.At).Distinct())
        {
            var old = before.Where(one => one.Dry > time).Select(one => one.Part).ToHashSet();
            var here = planned.Where(one => one.At == time || (one.At < time && one.Dry > time)).Select(one => one.Part).ToHashSet();
            if (here.IsSubsetOf(old))
                continue;
            here.UnionWith(old);
            var (pieces, area) = (here.Sum(part => car.Structure.Parts.First(one => one.Id == part).Count),
                here.Sum(part => car.Coating.Parts.First(one => one.Part == part).SquareMetres ?? 0));
            var corners = Corners(car).Where(one => (one.From ?? time.Date) <= time.Date && (one.Until ?? time.Date) >= time.Date).ToList();
            if (corners.Count > 0
                && (pieces > corners.Sum(one => one.MostPieces * one.Count ?? 1_000_000)
                    || area > corners.Sum(one => one.MostSquareMetres * one.Count ?? 1_000_000)))
                yield return $"{time}: {pieces} pieces and {area} m² are more than fits into the spray corner";
        }
    }

    /// <summary>Of several corners each: all that the plan hangs into it and that is not dry yet, a part in one place at a time.</summary>
    public static IEnumerable<string> CrowdsOfEach(Car car, CoatingPlan plan)
    {
        var hung = plan.Sessions
            .SelectMany(session => session.Parts
                .Select(part => (part.Part, part.Corner, session.At, Dry: Dry(car, session.Product, session.At, null)))).ToList();
        foreach (var (corner, time) in Corners(car) is { Count: > 1 } corners
            ? corners.SelectMany(corner => plan.Sessions.Select(session => (corner, session.At)).Distinct())
            : [])
        {
            var now = hung.Where(one => one.At == time || (one.At < time && one.Dry > time)).ToList();
            var here = now.Where(one => one.Corner == corner.Id).Select(one => one.Part).Distinct().ToList();
            var (pieces, area) = (here.Sum(part => car.Structure.Parts.First(one => one.Id == part).Count),
                here.Sum(part => car.Coating.Parts.First(one => one.Part == part).SquareMetres ?? 0));
            if (pieces > corner.MostPieces * corner.Count || area > corner.MostSquareMetres * corner.Count)
                yield return $"{time}: {pieces} pieces and {area} m² are more than fits into {corner.Name}";
            if (now.GroupBy(one => one.Part).Any(part => part.Select(one => one.Corner).Distinct().Count() > 1))
                yield return $"{time}: a part is in two corners";
        }
    }

    private static List<Facility> Corners(Car car) => [.. car.Calendar.Facilities.Where(one => one.Kind == FacilityKind.SprayCorner)];

    private static bool HasSpell(CarCalendar calendar, Facility corner, LocalDateTime at)
    {
        var own = calendar.Spells.Where(spell => spell.Whose == corner.Id).ToList();
        return own.Count == 0 || own.Exists(spell => SpellDays.Of(spell, at.Date).Any(day =>
            Period.Between(day + spell.From, at, PeriodUnits.Minutes).Minutes is >= 0 and var since && since < Length(spell)));
    }

    private static long Length(Spell spell) =>
        Period.Between(spell.From, spell.Until, PeriodUnits.Minutes).Minutes is > 0 and var minutes
            ? minutes
            : Period.Between(spell.From, spell.Until, PeriodUnits.Minutes).Minutes + (24 * 60);

    /// <summary>Dry to handle, else ready for the next coat; at once where the sheet says neither.</summary>
    private static LocalDateTime Dry(Car car, string product, LocalDateTime at, decimal? read) =>
        car.Coating.Product(product) is not { } known ? at
        : RecoatSpan.Cured(car.Calendar, known, FigureKind.Handle, at, read) is { } cured ? cured.Time
        : RecoatSpan.After(car.Calendar, known, at, read) is { } next ? next.Opens : at;
}
