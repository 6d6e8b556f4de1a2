using Refettle.Timeline.Network;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline.Tonight;

/// <summary>Whether lifts, tools and the like are there today.</summary>
internal sealed class Presence(CarCalendar calendar, WallClock clock)
{
    /// <summary>What a task needs and is not there today, in words; null when all is.</summary>
    public string? Missing(WorkTask task)
    {
        if (task.Uses.Contains(Needed.Dollies) && calendar.Facilities.All(one => one.Kind != FacilityKind.Dollies))
            return "the car does not roll, and you have named nothing that carries it";
        foreach (var facility in calendar.Facilities.Where(one => Needs(task, one) && !IsHere(one)))
        {
            if (facility.Kind is FacilityKind.Tool || task.Uses.Contains(Needed.Facility(facility.Id))
                || !calendar.Facilities.Any(other => other.Kind == facility.Kind && IsHere(other)))
                return $"{facility.Name} is not there today";
        }

        return null;
    }

    private static bool Needs(WorkTask task, Facility facility) => task.Uses.Contains(Needed.Facility(facility.Id)) || facility.Kind switch
    {
        FacilityKind.Tool => task.Steps.Any(step => step.Tool.Contains(facility.Name, StringComparison.OrdinalIgnoreCase)),
        FacilityKind.Lift => task.Stance is not null and not Car.OnWheels,
        FacilityKind.Bench => task.Uses.Contains(Needed.Bench),
        FacilityKind.SprayCorner => task.Uses.Contains(Needed.SprayCorner),
        FacilityKind.Dollies => task.Uses.Contains(Needed.Dollies),
        _ => false,
    };

    private bool IsHere(Facility facility)
    {
        if (facility.From > clock.Today || facility.Until < clock.Today)
            return false;
        var spells = calendar.Spells.Where(spell => spell.Whose == facility.Id).ToList();
        return spells.Count == 0 || spells.Any(spell => SpellDays.Of(spell, clock.Today).LastOrDefault() == clock.Today);
    }
}
