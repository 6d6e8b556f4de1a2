using Refettle.Access;
using Refettle.Stuck;

namespace Refettle.Timeline.Network;

/// <summary>A joint that is taken to be stuck, with the tries to expect.</summary>
/// <param name="Belief">The chances of the seizure levels 0 to 4.</param>
/// <param name="Row">The tries in their order while each one holds; soaks left out.</param>
/// <param name="Soak">To be done first; null when it has soaked or nothing soaks.</param>
internal sealed record StuckJoint(Joint Joint, ValueList<double> Belief, ValueList<Rung> Row, Rung? Soak, bool IsSoaked)
{
    /// <summary>The tries that need no gate against fire, before the first that does.</summary>
    public ValueList<Rung> Mild => Row.TakeWhile(rung => (rung.Danger & Danger.Fire) == 0).ToValueList();

    /// <summary>The rest.</summary>
    public ValueList<Rung> Hot => Row.Skip(Mild.Count).ToValueList();

    /// <summary>The chance that all of these hold.</summary>
    public double Hold(IEnumerable<Rung> rungs) => Belief.Select((chance, level) =>
        chance * rungs.Aggregate(1.0, (held, rung) => held * (1 - rung.OddsAt(level, IsSoaked || Soak is not null)))).Sum();

    /// <summary>Minutes to expect of rungs <paramref name="from"/> to <paramref name="until"/> of the
    /// row, given that those before held; what may break on the way is not in it.</summary>
    public Minutes Expected(int from, int until)
    {
        var reached = Hold(Row.Take(from));
        var minutes = Enumerable.Range(from, until - from)
            .Sum(i => (double)Row[i].Takes.Value * Hold(Row.Take(i)) / Math.Max(1e-9, reached));
        return new(Math.Round((decimal)minutes));
    }
}

/// <summary>Finds the joints of a plan that are more likely stuck than not, or were tried in vain.</summary>
internal static class StuckJoints
{
    /// <summary>From this chance of a hard or solid joint on it gets tasks of its own. A choice, not a figure from anywhere.</summary>
    public const double Likely = 0.5;

    public static Dictionary<string, StuckJoint> Of(NetworkQuestion question, CarStanding standing)
    {
        var tries = question.Car.Tries;
        var belief = CarBelief.Of(standing, question.Ladders, tries);
        var found = new Dictionary<string, StuckJoint>();
        foreach (var step in question.Plan.Steps.Where(step => step.Fact.Kind == FactKind.Open))
        {
            var joint = standing.Joints[step.Fact.Subject];
            var own = tries.Where(attempt => attempt.Joint == joint.Id).ToList();
            var condition = own.LastOrDefault(attempt => attempt.Becomes is not null)?.Becomes ?? JointCondition.Sound;
            var levels = belief.Joint(joint.Id);
            if (condition == JointCondition.Freed || (own.Count == 0 && levels[3] + levels[4] < Likely))
                continue;
            if (question.Ladders.For(joint.Kind) is { } ladders && ladders.ContainsKey(condition))
                found.Add(joint.Id, Climb(question, joint, ladders, condition, levels, own));
        }

        return found;
    }

    private static StuckJoint Climb(
        NetworkQuestion question, Joint joint, IReadOnlyDictionary<JointCondition, Ladder> ladders, JointCondition condition,
        double[] levels, List<Try> own)
    {
        var isSoaked = own.Any(attempt => attempt.IsSoaked || question.Ladders.Rung(joint.Kind, attempt.Rung)?.IsSoak == true);
        var best = TryPlanner.Best(new()
        {
            Ladders = ladders,
            Condition = condition,
            Belief = levels,
            Tried = own.Where(attempt => attempt.Becomes is null).Select(attempt => attempt.Rung).ToValueList(),
            IsSoaked = isSoaked,
            PerHour = question.Car.Settings.PerHour,
        });
        var rungs = ladders[condition].Rungs.ToDictionary(rung => rung.Id);
        var row = best.IfHeld.Select(id => rungs[id]).ToList();
        return new(joint, levels.ToValueList(), row.Where(rung => !rung.IsSoak).ToValueList(),
            isSoaked ? null : row.Find(rung => rung.IsSoak), isSoaked);
    }
}
