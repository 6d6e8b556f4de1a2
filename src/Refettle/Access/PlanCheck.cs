using Refettle.Access.Fire;

namespace Refettle.Access;

/// <summary>Replays a plan step by step on the car, from the access rules alone: it shares nothing
/// with the planner but the words.</summary>
public static class PlanCheck
{
    /// <summary>Everything that keeps the plan from working as written; empty for a valid plan.</summary>
    public static ValueList<Fault> Of(Car car, Plan plan) => All(car, plan).Select(one => one.Fault).ToValueList();

    /// <summary>The same, each with what it is about.</summary>
    internal static ValueList<PlanFault> All(Car car, Plan plan)
    {
        if (plan.Status == PlanStatus.Impossible)
            return [];
        var replay = new Replay(car, plan.Question);
        foreach (var step in plan.Steps)
            replay.Do(step);
        replay.End(plan);
        return replay.Faults.ToValueList();
    }

    private sealed class Replay
    {
        private const string Report = "This is a fault of the program: please report it.";

        private readonly Car _car;
        private readonly Question _question;
        private readonly CarStanding _before;
        private readonly HashSet<Fact> _true = [];
        private readonly HashSet<string> _stancesPaid = [];
        private readonly HashSet<string> _uniquesPaid = [];
        private string? _stance;
        private Minutes _sum;

        public Replay(Car car, Question question)
        {
            (_car, _question, _before, _stance) = (car, question, new(car), car.Stance);
        }

        public List<PlanFault> Faults { get; } = [];

        public void Do(Step step)
        {
            if (Missing(step) is { } missing)
                Add(PlanFaultKind.Order, $"step {step.Fact}", missing);
            else if (Threat(step) is { } threat)
                Add(PlanFaultKind.Fire, $"step {step.Fact}", threat);
            var isStance = _before.IsStance(step.Fact);
            var isPaid = isStance && (_before.IsTrue(step.Fact) || !_stancesPaid.Add(step.Fact.Subject));
            var cost = isPaid ? 0 : CostOf(step);
            if (Math.Abs(cost - step.Cost.Total.Value) > 0.03m)
                Add(PlanFaultKind.Minutes, $"step {step.Fact}", $"it takes {cost:0.##} min by the sheet, the plan says {step.Cost.Total}");
            _sum += step.Cost.Total;
            if (isStance)
                _stance = step.Fact.Subject;
            else
                _true.Add(step.Fact);
        }

        public void End(Plan plan)
        {
            foreach (var goal in _question.Goals.Where(goal => !Holds(goal)))
                Add(PlanFaultKind.Order, $"goal {goal}", "the plan ends without it");
            if (_sum != plan.Cost.Total || plan.Bound > plan.Cost.Total)
                Add(PlanFaultKind.Sum, "plan", $"its steps take {_sum}, it says {plan.Cost.Total}, bound {plan.Bound}");
        }

        private void Add(PlanFaultKind kind, string place, string found) => Faults.Add(new(kind, new(place, found, Report)));

        /// <summary>Flame, sparks or a cut while something near still burns.</summary>
        private string? Threat(Step step)
        {
            var (danger, onBench) = step.Fact.Kind switch
            {
                FactKind.Open when Named(_before.Joints[step.Fact.Subject].Ways, step.Way) is { } way =>
                    (HotWork.Of(way, _before.Joints[step.Fact.Subject]), way.Where == WorkPlace.OnBench),
                FactKind.State when Named(_before.States[step.Fact.Subject].Ways, step.Way) is { } way =>
                    (HotWork.Of(way, joint: null), false),
                FactKind.Off when step.Way is "alone" or "" => (HotWork.OfTool(step.Tool), false),
                _ => (Danger.None, false),
            };
            return (danger & Danger.Fire) == 0 ? null : FireNeeds.Near(_before, FireNeeds.HeldBy(step.Fact, _before))
                .Where(one => one.Mend is not { } mend || (!onBench && !Holds(mend) && !Holds(Fact.Off(one.Part.Id))))
                .Select(one => $"flame, sparks or a cut near {one.Part.Id}: {one.Cause}").FirstOrDefault();
        }

        private static Way? Named(ValueList<Way> ways, string name) => ways.FirstOrDefault(way => way.Id == name);

        private bool Holds(Fact fact) =>
            _before.IsStance(fact) ? _stance == fact.Subject : _true.Contains(fact) || _before.IsTrue(fact);

        private string? Missing(Step step) => step.Fact.Kind switch
        {
            FactKind.Open => OfJoint(_before.Joints[step.Fact.Subject], step),
            FactKind.Off when _before.Parts.TryGetValue(step.Fact.Subject, out var part) => OfPart(part, step),
            FactKind.Off => OfUnit(_before.SubAssemblies[step.Fact.Subject]),
            FactKind.Free =>
                First(_before.JointsOf(step.Fact.Subject).Select(joint => Fact.Open(joint.Id)).Prepend(Fact.Off(step.Fact.Subject))),
            FactKind.Reach => First(_before.Spaces[step.Fact.Subject].ClosedBy.Select(Fact.Off)),
            _ => OfState(_before.States[step.Fact.Subject], step),
        };

        /// <summary>Minutes of a step from the sheet's own figures, before rounding.</summary>
        private decimal CostOf(Step step) => step.Fact.Kind switch
        {
            FactKind.Open => CostOf(_before.Joints[step.Fact.Subject].Ways, step.Way, _before.Joints[step.Fact.Subject].Refit),
            FactKind.State => CostOf(_before.States[step.Fact.Subject].Ways, step.Way),
            FactKind.Off when step.Way == "alone" => CostOf(_before.Parts[step.Fact.Subject].Out, [step.Fact.Subject]),
            FactKind.Off when step.Way.Length == 0 =>
                CostOf(_before.SubAssemblies[step.Fact.Subject].Out, _before.SubAssemblies[step.Fact.Subject].Members),
            _ => 0,
        };

        private decimal CostOf(ValueList<Way> ways, string name, RefitWay? refit = null) =>
            ways.Where(way => way.Id == name).Select(way => CostOf(way, refit)).FirstOrDefault();

        private decimal CostOf(Way way, RefitWay? refit) => way.Open.Value + (refit?.Takes ?? way.Close).Value
            + ((way.Spends.Amount + way.Destroys.Sum(part => (_before.Parts[part].Price ?? _car.Settings.UnknownPrice).Amount))
                * 60 / _car.Settings.PerHour.Amount);

        private decimal CostOf(WayOut way, IEnumerable<string> parts) => way.Off.Value + (way.Refit?.Takes ?? way.On).Value
            + (_car.Settings.UniqueOff.Value
                * parts.Count(
                    part => _before.Parts[part].Scarcity == Scarcity.Unique && !_before.IsTrue(Fact.Off(part)) && _uniquesPaid.Add(part)));

        private string? OfJoint(Joint joint, Step step)
        {
            var way = joint.Ways.FirstOrDefault(way => way.Id == step.Way);
            if (way is null)
                return $"joint {joint.Id} has no way '{step.Way}'";
            if (joint.Holds.Any(_question.Without.Contains))
                return "it touches a part that may not be touched";
            var bench = way.Where == WorkPlace.OnBench ? joint.Holds.Select(Fact.Off) : [];
            return Destroyed(way) ?? First(way.Clear.Concat(bench));
        }

        private string? OfPart(Part part, Step step)
        {
            if (part.Fixed || _question.Without.Contains(part.Id))
                return "this part may not come off";
            if (step.Way == "alone")
                return First(_before.JointsOf(part.Id).Select(joint => Fact.Open(joint.Id)).Concat(part.Out.Clear));
            var unit = _before.SubAssemblies.Values.FirstOrDefault(unit => step.Way == $"with {unit.Id}" && unit.Members.Contains(part.Id));
            return unit is null ? $"part {part.Id} has no way '{step.Way}'" : First([Fact.Off(unit.Id)]);
        }

        private string? OfUnit(SubAssembly unit)
        {
            if (unit.Members.Any(part => _before.Parts[part].Fixed || _question.Without.Contains(part)))
                return "a member of it may not come off";
            return First(_before.OuterJointsOf(unit).Select(joint => Fact.Open(joint.Id)).Concat(unit.Out.Clear));
        }

        private string? OfState(State state, Step step)
        {
            var way = state.Ways.FirstOrDefault(way => way.Id == step.Way);
            if (way is null)
                return $"state {state.Id} has no way '{step.Way}'";
            var lost = state.IsStance
                ? _before.Carriers(state).FirstOrDefault(part => Holds(Fact.Off(part)) || _car.Unsound.Contains(part))
                : null;
            return lost is not null ? $"{lost} is to carry the car and cannot" : Destroyed(way) ?? First(way.Clear);
        }

        private string? Destroyed(Way way) => way.Destroys
            .Where(part => _question.Without.Contains(part)
                || (_before.Parts[part].Scarcity == Scarcity.Unique && !_car.Settings.Lifted.Contains(part)))
            .Select(part => $"it destroys {part}").FirstOrDefault();

        private string? First(IEnumerable<Fact> needs) =>
            needs.Where(need => !Holds(need)).Select(need => $"{need} does not hold yet").FirstOrDefault();
    }
}
