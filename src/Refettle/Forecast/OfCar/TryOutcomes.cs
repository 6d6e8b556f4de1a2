using Refettle.Access;
using Refettle.Forecast.Tries;
using Refettle.Stuck;
using Refettle.Timeline.Network;

namespace Refettle.Forecast.OfCar;

/// <summary>What the tries of a car's tasks come to, by the rust of their zones.</summary>
internal sealed class TryOutcomes
{
    private readonly CarForecastQuestion _question;
    private readonly Dictionary<string, Joint> _joints;
    private readonly SeizureBelief _belief;
    private readonly RustLevels _rust;

    public TryOutcomes(CarForecastQuestion question)
    {
        _question = question;
        var standing = new CarStanding(question.Car);
        _joints = question.Car.Structure.Joints.ToDictionary(joint => joint.Id);
        _belief = CarBelief.Of(standing, question.Ladders, question.Car.Tries);
        _rust = new(_belief);
    }

    public ValueList<HiddenLevel> Levels => _rust.Levels;

    /// <returns>Null when no ladder fits the joint.</returns>
    public ByLevel? Of(WorkTask task, string joint)
    {
        if (!_joints.TryGetValue(joint, out var known) || Begin(known) is not { } begin)
            return null;
        var others = _question.Projection.Tasks.Where(other => other.Kind == TaskKind.Try && other.Joint == joint && other.Id != task.Id)
            .ToList();
        var before = others.Where(other => IsBefore(other, task)).SelectMany(other => other.Rungs).ToList();
        var reached = LadderMinutes.Holds(before, begin.IsSoaked);
        var belief = begin.Belief.Zip(reached, (chance, held) => chance * held).ToArray();
        var asked = begin with
        {
            Belief = belief.Sum() > 0 ? Array.ConvertAll(belief, chance => chance / belief.Sum()) : begin.Belief,
            Tried = [.. begin.Tried, .. before.Select(rung => rung.Id)],
        };
        return _rust.Of(joint,
            LadderMinutes.Row(asked, task.Rungs, reached,
                goesOn: others.Count == before.Count || !others.Exists(other => IsBefore(task, other))));
    }

    /// <summary>The tries that only ease a joint come before those that open it.</summary>
    private bool IsBefore(WorkTask one, WorkTask other) =>
        _question.Network.Links.Any(link => link.Before == one.Id && link.After == other.Id)
        || (one.Steps.Count == 0 && other.Steps.Count > 0);

    /// <summary>The joint before the first try of the plan: soaked where the plan soaks it.</summary>
    private NextTryQuestion? Begin(Joint joint)
    {
        var ladders = _question.Ladders.For(joint.Kind);
        var own = _question.Car.Tries.Where(attempt => attempt.Joint == joint.Id).ToList();
        var condition = own.LastOrDefault(attempt => attempt.Becomes is not null)?.Becomes ?? JointCondition.Sound;
        if (condition == JointCondition.Freed || !ladders.TryGetValue(condition, out var ladder))
            return null;
        var isSoaked = own.Any(attempt => attempt.IsSoaked || _question.Ladders.Rung(joint.Kind, attempt.Rung)?.IsSoak == true)
            || _question.Projection.Tasks.Any(task => task.Kind == TaskKind.Soak && task.Joint == joint.Id);
        var soaks = ladder.Rungs.Where(rung => rung.IsSoak && !rung.IsSure && isSoaked).Select(rung => rung.Id);
        return new()
        {
            Ladders = ladders,
            Condition = condition,
            Belief = _belief.Joint(joint.Id),
            IsSoaked = isSoaked,
            Tried = own.Where(attempt => attempt.Becomes is null).Select(attempt => attempt.Rung).Concat(soaks).Distinct().ToValueList(),
            PerHour = _question.Car.Settings.PerHour,
        };
    }
}
