using NodaTime;

namespace Refettle.Coating;

/// <summary>Where there are several spray corners, each with days and room of its own: each part hangs
/// in one of them until it is dry.</summary>
internal static class CornerPlan
{
    /// <param name="plan">Plans by what all corners hold together.</param>
    public static CoatingPlan Of(CoatingQuestion question, Func<CoatingQuestion, CoatingPlan> plan)
    {
        var (together, corners) = (plan(question), Corners(question.Car));
        if (corners.Count < 2)
            return together;
        return CornerPlaces.Of(question.Car, together.Sessions) is { } places ? Placed(together, places) : Alone(question, plan, together);
    }

    public static List<Facility> Corners(Car car) => [.. car.Calendar.Facilities.Where(one => one.Kind == FacilityKind.SprayCorner)];

    private static CoatingPlan Placed(CoatingPlan plan, IReadOnlyDictionary<(LocalDateTime At, string Part), string> places) =>
        plan with
        {
            Sessions = plan.Sessions
            .Select(session => session with
            { Parts = session.Parts.Select(part => part with { Corner = places[(session.At, part.Part)] }).ToValueList() })
                .ToValueList()
        };

    /// <summary>With the one of them that serves most parts in fewest sessions. Whether both would do with fewer is not known.</summary>
    private static CoatingPlan Alone(CoatingQuestion question, Func<CoatingQuestion, CoatingPlan> plan, CoatingPlan together)
    {
        var (corner, best) = Corners(question.Car)
            .Select(corner => (corner, Plan: plan(question with { Car = Only(question.Car, corner) })))
            .MinBy(one => (one.Plan.Unplanned.Count, one.Plan.Sessions.Count));
        var note = new Fault("spray corner",
            $"what fits into all of them together does not hang in one of them each until it is dry, as far as was looked: planned with {corner.Name} alone", "Put one away, refettle facility remove, and ask again to see what another does.")
        { Severity = Severity.Note };
        return best with
        {
            Sessions = best.Sessions
                .Select(session => session with { Parts = session.Parts.Select(part => part with { Corner = corner.Id }).ToValueList() })
                .ToValueList(),
            AtLeast = Math.Min(together.AtLeast, best.AtLeast),
            Notes = [note, .. best.Notes],
        };
    }

    private static Car Only(Car car, Facility corner) =>
        car with
        {
            Calendar = car.Calendar with
            { Facilities = car.Calendar.Facilities.Where(one => one.Kind != FacilityKind.SprayCorner || one == corner).ToValueList() }
        };
}
