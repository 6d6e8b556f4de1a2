using NodaTime;
using Refettle.Access;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>Replays a plan on its car, coat by coat, without the planner's rows and occasions.</summary>
public static class CoatingPlanCheck
{
    /// <summary>All that is wrong; nothing when the plan is sound.</summary>
    public static IEnumerable<string> Of(CoatingQuestion question, CoatingPlan plan)
    {
        var coating = question.Car.Coating;
        if (plan.Sessions.Select(session => (session.Product, session.At)).Distinct().Count() < plan.Sessions.Count
            || plan.AtLeast > plan.Sessions.Count)
            yield return "a session is there twice, or the bound is above the sessions";
        foreach (var session in plan.Sessions)
        {
            var product = coating.Product(session.Product)!;
            if (!CornerCheck.IsThere(question.Car, session))
                yield return $"{session.Product} {session.At}: the spray corner is not there until it is dry";
            if (session.At < question.From || CoatingDays.Against(question.Car.Calendar, session.At.Date, AirNeeds.Of(product)) is not null)
                yield return $"{session.Product} {session.At}: not then";
            if (CoatingCautions.Of(product).Except(session.Cautions).Any()
                || session.Parts.SelectMany(part => KeepBare.Of(question.Car, part.Part)).Except(session.Masks).Any())
                yield return $"{session.Product} {session.At}: a caution or a mask is missing";
        }

        foreach (var crowd in CornerCheck.Crowds(question.Car, plan).Concat(CornerCheck.CrowdsOfEach(question.Car, plan)))
            yield return crowd;

        foreach (var part in PartProgress.All(coating).Where(part => !part.IsDone))
        {
            var coats = plan.Sessions
                .SelectMany(session => session.Parts.Where(one => one.Part == part.Part)
                    .Select(one => (session.Product, session.At, one.Stage, one.Coats, one.Late))).OrderBy(coat => coat.At).ToList();
            if (plan.Unplanned.Any(one => one.Part == part.Part))
            {
                if (coats.Count > 0)
                    yield return $"{part.Part} is planned and not planned";
                continue;
            }

            if (!coats.Select(coat => (coat.Stage, coat.Product, coat.Coats)).SequenceEqual(part.ToCome))
                yield return $"{part.Part}: other coats than its system has";
            var before = part.Last is { } last
                ? (last.Product, last.At, Read: last.Celsius)
                : ((string Product, LocalDateTime At, decimal? Read)?)null;
            foreach (var coat in coats)
            {
                if (before is var (product, at, read) && !Fits(question, coat.At, coat.Late, product, at, read))
                    yield return $"{part.Part}: {coat.Product} on {product} outside its window";
                before = (coat.Product, coat.At, null);
            }
        }
    }

    private static bool Fits(CoatingQuestion question, LocalDateTime at, string? late, string product, LocalDateTime before, decimal? read)
    {
        var span = RecoatSpan.After(question.Car.Calendar, question.Car.Coating.Product(product)!, before, read);
        return span is not null && (span.Has(at) || (late is not null && span.Closes < question.From));
    }
}
