using System.Globalization;
using System.Text;
using Refettle.Scope;

namespace Refettle.Solvers.Tests.Scope;

/// <summary>The choice of jobs as an integer program, written from the description of car and jobs and not from the planner: order is kept
/// by a number for each fact instead of by cuts, each need has a row of its own, and each job is in or not.</summary>
internal sealed class GlpkModel
{
    private readonly Car _car;
    private readonly Dictionary<Fact, List<int>> _waysOf = [];
    private readonly List<(Fact Fact, decimal Minutes, decimal Money, string[] Uniques, Fact[] Needs)> _ways = [];
    private readonly List<Fact> _facts = [];

    private GlpkModel(Car car) => _car = car;

    public static string Of(Car car, ScopeQuestion question)
    {
        var model = new GlpkModel(car);
        foreach (var goal in car.Jobs.SelectMany(job => job.Goals))
            model.Call(goal);
        for (var fact = 0; fact < model._facts.Count; fact++)
            model.AddWays(model._facts[fact]);
        return model.Text(question);
    }

    private void Call(Fact fact)
    {
        if (!_facts.Contains(fact))
            _facts.Add(fact);
    }

    private void AddWays(Fact fact)
    {
        _waysOf[fact] = [];
        var (car, id) = (_car.Structure, fact.Subject);
        switch (fact.Kind)
        {
            case FactKind.Off when car.Parts.FirstOrDefault(part => part.Id == id) is { } part:
                if (part.Fixed)
                    return;
                Add(fact, part.Out.Off.Value + part.Out.On.Value, 0,
                    [.. car.Joints.Where(joint => joint.Holds.Contains(id)).Select(joint => Fact.Open(joint.Id)), .. part.Out.Clear],
                    Rare([id]));
                foreach (var unit in car.SubAssemblies.Where(unit => unit.Members.Contains(id)))
                    Add(fact, 0, 0, [Fact.Off(unit.Id)], []);
                return;
            case FactKind.Off:
                var group = car.SubAssemblies.Single(unit => unit.Id == id);
                if (group.Members.All(member => !car.Parts.Single(part => part.Id == member).Fixed))
                    Add(fact, group.Out.Off.Value + group.Out.On.Value, 0,
                        [.. car.Joints.Where(joint => joint.Holds.Any(group.Members.Contains) && !joint.Holds.All(group.Members.Contains))
                            .Select(joint => Fact.Open(joint.Id)), .. group.Out.Clear], Rare(group.Members));
                return;
            case FactKind.Free:
                Add(fact, 0, 0, [Fact.Off(id), .. car.Joints.Where(joint => joint.Holds.Contains(id)).Select(joint => Fact.Open(joint.Id))],
                    []);
                return;
            case FactKind.Reach:
                Add(fact, 0, 0, [.. car.Spaces.Single(space => space.Id == id).ClosedBy.Select(Fact.Off)], []);
                return;
            case FactKind.Open:
                var joint = car.Joints.Single(joint => joint.Id == id);
                foreach (var way in joint.Ways)
                    AddWay(fact, way, way.Where == WorkPlace.OnBench ? [.. joint.Holds.Select(Fact.Off)] : []);
                return;
            default:
                foreach (var way in car.States.Single(state => state.Id == id).Ways)
                    AddWay(fact, way, []);
                return;
        }
    }

    private void AddWay(Fact fact, Way way, Fact[] bench)
    {
        if (way.Destroys.All(part => Rare([part]).Length == 0))
            Add(fact, way.Open.Value + way.Close.Value,
                way.Spends.Amount + way.Destroys.Sum(name => _car.Structure.Parts.Single(part => part.Id == name).Price!.Value.Amount),
                [.. way.Clear, .. bench], []);
    }

    private string[] Rare(IEnumerable<string> parts) =>
        [.. parts.Where(name => _car.Structure.Parts.Single(part => part.Id == name).Scarcity == Scarcity.Unique)];

    private void Add(Fact fact, decimal minutes, decimal money, Fact[] needs, string[] uniques)
    {
        // What the car has already is no need; on these cars nothing is done yet.
        _waysOf[fact].Add(_ways.Count);
        _ways.Add((fact, minutes, money, uniques, [.. needs.Distinct()]));
        foreach (var need in needs)
            Call(need);
    }

    private string Text(ScopeQuestion question)
    {
        var (gain, rows, uniques) = (new StringBuilder(), new StringBuilder(), _ways.SelectMany(way => way.Uniques).Distinct().ToList());
        var rate = question.PerHour.Amount / 60;
        for (var job = 0; job < _car.Jobs.Count; job++)
            AddJob(job, question, rate, gain, rows);
        for (var way = 0; way < _ways.Count; way++)
            AddWay(way, rate, gain, rows, uniques);
        foreach (var fact in _facts)
            rows.AppendLine($" {Sum(_waysOf[fact].Select(way => $"y{way}"))} - x{Number(fact)} = 0");
        gain.AppendJoin("", uniques.Select((_, number) => Term(-rate * _car.Settings.UniqueOff.Value, $"u{number}")));
        AddLimit(rows, question.Hours?.Value, job => job.Work.Value, way => way.Minutes);
        AddLimit(rows, question.Budget?.Amount, job => job.Parts.Amount, way => way.Money);
        string[] binaries =
            [.. Names('j', _car.Jobs.Count), .. Names('y', _ways.Count), .. Names('x', _facts.Count), .. Names('u', uniques.Count)];
        var orders = string.Join('\n', Names('o', _facts.Count).Select(order => $" 0 <= {order} <= {_facts.Count}"));
        return $"Maximize\n gain: 0 z {gain}\nSubject To\n{rows} z = 0\nBounds\n{orders}\nBinary\n {string.Join("\n ", binaries)}\nEnd\n";
    }

    private void AddJob(int number, ScopeQuestion question, decimal rate, StringBuilder gain, StringBuilder rows)
    {
        var job = _car.Jobs[number];
        var worth = job.Worth is null
            ? 0
            : (job.Wish == Wish.Maybe ? job.Worth.Least : job.Worth.Likely) * (job.Worth.In == WorthUnit.Points
                ? question.PerPoint!.Value.Amount
                : 1);
        gain.Append(Term(worth - job.Parts.Amount - (rate * job.Work.Value), $"j{number}"));
        foreach (var goal in job.Goals)
            rows.AppendLine($" j{number} - x{Number(goal)} <= 0");
        foreach (var other in job.With)
            rows.AppendLine($" j{number} - j{_car.Jobs.Select(known => known.Id).ToList().IndexOf(other)} <= 0");
        if (job.Wish == Wish.Must)
            rows.AppendLine($" j{number} = 1");
    }

    private void AddWay(int number, decimal rate, StringBuilder gain, StringBuilder rows, List<string> uniques)
    {
        var way = _ways[number];
        gain.Append(Term(-way.Money - (rate * way.Minutes), $"y{number}"));
        foreach (var need in way.Needs)
        {
            var most = _facts.Count + 1;
            rows.AppendLine($" y{number} - x{Number(need)} <= 0");
            rows.AppendLine($" o{Number(way.Fact)} - o{Number(need)} - {most} y{number} >= {1 - most}");
        }

        foreach (var unique in way.Uniques)
            rows.AppendLine($" y{number} - u{uniques.IndexOf(unique)} <= 0");
    }

    private void AddLimit(
        StringBuilder rows, decimal? most, Func<Job, decimal> ofJob,
        Func<(Fact Fact, decimal Minutes, decimal Money, string[] Uniques, Fact[] Needs), decimal> ofWay)
    {
        if (most is { } limit)
            rows.AppendLine(CultureInfo.InvariantCulture,
                $" 0 z {string.Concat(_car.Jobs.Select((job, number) => Term(ofJob(job), $"j{number}")))}{string.Concat(_ways.Select((way, number) => Term(ofWay(way), $"y{number}")))} <= {limit}");
    }

    private int Number(Fact fact) => _facts.IndexOf(fact);

    private static IEnumerable<string> Names(char letter, int count) => Enumerable.Range(0, count).Select(number => $"{letter}{number}");

    private static string Sum(IEnumerable<string> names) => string.Join(" + ", names.DefaultIfEmpty("0 z"));

    private static string Term(decimal factor, string name) =>
        factor == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {(factor < 0 ? "-" : "+")} {Math.Abs(factor)} {name}\n");
}
