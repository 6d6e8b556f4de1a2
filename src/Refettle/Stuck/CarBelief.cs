using Refettle.Access;

namespace Refettle.Stuck;

/// <summary>What is believed of a car's joints after its logged tries.</summary>
public static class CarBelief
{
    /// <param name="standing">The car.</param>
    /// <param name="ladders">Ladders for the kinds of its joints; tries of rungs that they do not have teach nothing.</param>
    /// <param name="tries">The tries that count.</param>
    public static SeizureBelief Of(CarStanding standing, LadderSet ladders, IEnumerable<Try> tries)
    {
        var attempts = tries.Where(attempt => standing.Joints.ContainsKey(attempt.Joint))
            .Select(attempt => (attempt, rung: ladders.Rung(standing.Joints[attempt.Joint].Kind, attempt.Rung)))
            .Where(pair => pair.rung is not null).Select(pair => new Attempt(pair.attempt, pair.rung!));
        return new(SeizureModel.CommonPractice, joint => PlaceOf(standing, joint), attempts);
    }

    /// <summary>The zone and exposure that a joint has in common with its neighbours.</summary>
    public static (string Zone, int Exposure) PlaceOf(CarStanding standing, string name)
    {
        var joint = standing.Joints[name];
        var part = joint.Holds.Select(held => standing.Parts[held]).FirstOrDefault(held => !held.Fixed) ?? standing.Parts[joint.Holds[0]];
        var exposure = joint.Exposure ?? (standing.Zones.TryGetValue(part.Zone, out var zone) ? zone.Exposure : 1);
        return (part.Zone, exposure);
    }
}

/// <summary>What was tried at a joint so far.</summary>
/// <param name="Condition">What it is now.</param>
/// <param name="Held">Rungs that failed.</param>
/// <param name="IsSoaked">Whether it has soaked.</param>
public sealed record TriesSoFar(JointCondition Condition, ValueList<string> Held, bool IsSoaked)
{
    public static TriesSoFar Of(Car car, Joint joint, LadderSet ladders)
    {
        var own = car.Tries.Where(attempt => attempt.Joint == joint.Id).ToList();
        return new(
            own.LastOrDefault(attempt => attempt.Becomes is not null)?.Becomes ?? JointCondition.Sound,
            own.Where(attempt => attempt.Becomes is null).Select(attempt => attempt.Rung).ToValueList(),
            own.Any(attempt => attempt.IsSoaked || ladders.Rung(joint.Kind, attempt.Rung)?.IsSoak == true));
    }
}
