using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>One move of the car. While it rolls it is let down, pushed and raised again; else it is
/// carried, by two people and on dollies.</summary>
/// <remarks>Minutes are common practice, no source. That nobody is under a load and that a load is blocked at
/// once: 29 CFR 1910.244(a)(2). The rest is common practice; the maker's manual comes first.</remarks>
/// <param name="then">The car as it is right before the move.</param>
/// <param name="at">The place that it is moved to; null for where it usually stands.</param>
internal sealed class MoveTask(CarStanding then, string? at)
{
    private const int Pushed = 15;

    private const int Carried = 60;

    private static readonly ValueList<string> _rolling =
    [
        "Brakes may not hold: know before it moves. Somebody at the wheel, chocks at hand, steering connected; level ground, nobody in front of it. A slope takes a rope winch or people with the gear.",
    ];

    private static readonly ValueList<string> _carried =
    [
        "Nobody under the car, and no hand or foot under it, while it moves or stands on dollies: it goes back on stands before anyone works under it.",
        "A jack lifts, it carries no car across a floor: dollies or skates rated for the load, under its strong points or axle, the car strapped to them.",
        "Level, swept, firm floor; chocked before and after; two people, one of them only watching. A slope or a road takes people with a trailer and winch.",
        "Where it may be lifted and carried the maker's manual says.",
    ];

    public WorkTask Of(string id)
    {
        var against = Rolling.Against(then).ToList();
        return against.Count == 0 ? Rolls(id) : Stands(id, against);
    }

    private const string Prefix = "move.";

    /// <summary>The name of the move to where a task is done.</summary>
    public static string There(string task) => Prefix + task;

    /// <summary>The task that a move to a place is named after.</summary>
    public static string For(string move) => move[Prefix.Length..];

    private string Where =>
        at is null ? "back to where it usually stands" : $"to {then.Car.Calendar.Facilities.First(one => one.Id == at).Name}";

    /// <summary>The car gets in while the place is there.</summary>
    private ValueList<string> Open => at is null ? [] : [Needed.Facility(at)];

    private WorkTask Rolls(string id)
    {
        var (down, up) = (QuickestInto(Refettle.Car.OnWheels), QuickestInto(then.Car.Stance));
        var isRaised = then.Car.Stance is not null and not Refettle.Car.OnWheels;
        return Task(id) with
        {
            Says = isRaised ? $"Let the car down, roll it {Where}, and raise it as it stood" : $"Roll the car {Where}",
            Takes = StripTasks.Whole(Pushed + (isRaised ? (down?.Open.Value ?? 0) + (up?.Open.Value ?? 0) : 0)),
            Cautions = isRaised ? [UsualCautions.Lower, .. _rolling, UsualCautions.Raise] : _rolling,
        };
    }

    private WorkTask Stands(string id, List<string> against) => Task(id) with
    {
        Says = $"Carry the car {Where}: it does not roll ({Few(against)})",
        Takes = new(Carried),
        Uses = [Needed.Helper, Needed.Dollies, .. Open],
        Cautions = [.. _carried, UsualCautions.Lower, UsualCautions.Raise],
    };

    private WorkTask Task(string id) =>
        new()
        {
            Id = id,
            Kind = TaskKind.Move,
            Says = "",
            Takes = Minutes.Zero,
            Origin = Origin.CommonPractice,
            Pace = Pace.Unbroken,
            At = at,
            Uses = Open
        };

    private Way? QuickestInto(string? stance) =>
        stance is not null && then.States.TryGetValue(stance, out var state) ? state.Ways.MinBy(way => way.Open.Value) : null;

    private static string Few(List<string> against) =>
        against.Count <= 3 ? string.Join(", ", against) : $"{string.Join(", ", against.Take(3))} and {against.Count - 3} more";
}
