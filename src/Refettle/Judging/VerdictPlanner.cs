using Refettle.Access;

namespace Refettle.Judging;

/// <summary>Suggests what to do with parts: the cheapest that can be done by the date, everything turned into minutes.</summary>
/// <param name="planner">Prices getting at a part, on top of what is planned.</param>
public sealed class VerdictPlanner(IAccessPlanner planner)
{
    /// <exception cref="KeyNotFoundException">The car has no such part.</exception>
    public ValueList<VerdictAnswer> Of(Car car, VerdictQuestion question, CancellationToken cancel = default)
    {
        var bench = new Workbench(car, question, planner, cancel);
        var asked = question.Parts.Count > 0 ? question.Parts : Spoken(car);
        var answers = asked.Select(part => Of(bench, bench.Standing.Parts[part])).ToValueList();
        var faults = answers.SelectMany(answer => VerdictCheck.Of(car, question, answer)).ToList();
        return faults.Count == 0 ? answers : throw new InvalidOperationException("A verdict contradicts itself: " + faults[0]);
    }

    private static ValueList<string> Spoken(Car car) => car.Structure.Parts.Select(part => part.Id)
        .Where(part => car.Findings.Any(finding => finding.Of == $"part {part}") || car.Verdicts.Any(verdict => verdict.Part == part))
        .ToValueList();

    private static VerdictAnswer Of(Workbench bench, Part part)
    {
        var condition = Condition.Of(bench.Car, $"part {part.Id}");
        var options = new Options(bench, part, condition).All().OrderBy(option => option.Cannot is not null).ThenBy(option => option.Late)
            .ThenBy(option => option.Total.Value).ThenBy(option => option.Kind).ToValueList();
        return new()
        {
            Part = part.Id,
            Condition = condition,
            Options = options,
            Suggested = condition.Worst is null ? null : options.FirstOrDefault(option => option.Cannot is null),
            Own = bench.Car.Verdicts.FirstOrDefault(verdict => verdict.Part == part.Id),
            Notes = bench.Notes(part, condition).ToValueList(),
            Warning = part.Scarcity == Scarcity.Unique ? $"{part.Name} is unique: there is no other. Stop rather than force it." : null,
        };
    }
}
