namespace Refettle.Timeline.Network;

/// <summary>Shielding before heat.</summary>
internal static class Shields
{
    /// <summary>Rubber and plastic near a joint are shielded right before a task, once all that comes before that is done.</summary>
    public static void Add(NetworkDraft draft, string joint, string name, string task)
    {
        var shield = draft.Add(new()
        {
            Id = $"shield.{joint}",
            Kind = TaskKind.Shield,
            Says = $"Shield rubber and plastic near {name}; extinguisher and water at hand",
            Takes = new(10),
            Origin = Origin.CommonPractice,
            Joint = joint,
            Stance = draft[task].Stance,
            Place = draft[task].Place,
            Posture = draft[task].Posture,
            Chance = draft[task].Chance,
        });
        foreach (var before in draft.DirectlyBefore(task).ToList())
            draft.Link(before, shield);
        draft.Link(shield, task);
    }
}
