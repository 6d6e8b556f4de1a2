using NodaTime;
using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Moves the car between the places of the owner that tasks use. The order with few moves is
/// settled here, so that whether the car rolls is known for each of them; it is not always the one that ends first.</summary>
/// <param name="dues">When the car can leave at the earliest, where that is known.</param>
internal sealed class Moves(NetworkDraft draft, CarStanding standing, ValueList<MoveDue> dues)
{
    private readonly Dictionary<string, TaskMark> _marks = standing.Car.Calendar.Marks.ToDictionary(mark => mark.Task);
    private readonly HashSet<Fact> _done = [.. standing.Car.Done];
    private string? _stance = standing.Car.Stance;
    private (string? At, string? Since) _now;
    private string? _move;
    private List<string> _here = [];

    public void Add()
    {
        var placed = draft.Tasks.Where(task => task.At is not null).ToList();
        if (placed.Count == 0)
            return;
        foreach (var task in placed)
        {
            foreach (var check in draft.Tasks.Where(one => one.Kind == TaskKind.Check).ToList())
                draft.TryLink(task.Id, check.Id, "checked once all is done");
        }

        _now = Start(placed);
        foreach (var task in new VisitOrder(draft, standing, _now.At, IsBound, dues).Of())
            Pass(task);
        if (LastDay(_now.At) is not null)
            Go(null, "");
    }

    /// <summary>Where the car is by what was last marked: at the place of a task or move that is
    /// begun or done, or back from there.</summary>
    private (string? At, string? Since) Start(List<WorkTask> placed) => placed
        .SelectMany(task => new[] { (Name: task.Id, task.At, Since: task.Id), (Name: MoveTask.There(task.Id), task.At, Since: task.Id),
            (Name: Back(task.Id), At: (string?)null, Since: (string?)null) })
        .Where(place => _marks.ContainsKey(place.Name)).OrderBy(place => _marks[place.Name].At)
        .Select(place => (place.At, (string?)place.Since)).LastOrDefault();

    /// <summary>Whether it asks where the car is: what is over does not.</summary>
    private bool IsBound(WorkTask task) =>
        task.IsAtCar && !(_marks.TryGetValue(task.Id, out var mark) && mark.Progress == TaskProgress.Done);

    private void Pass(WorkTask task)
    {
        if (IsBound(task))
        {
            if (task.At != _now.At)
                Go(task.At, task.Id);
            if (_move is not null)
                draft.Link(_move, task.Id, why: "the car is there by then");
            _here.Add(task.Id);
        }

        Change(task);
    }

    /// <param name="named">The task that it is moved for.</param>
    private void Go(string? to, string named)
    {
        var since = _here.LastOrDefault(id => draft[id].At is not null) ?? _now.Since;
        var id = to is not null ? MoveTask.There(named) : Back(since ?? named);
        var then = new CarStanding(standing.Car with { Done = _done.ToValueList(), Stance = _stance });
        var move = draft.Add(new MoveTask(then, to).Of(id) with { Latest = LastDay(_now.At)?.PlusDays(1).AtMidnight() });
        if (draft[move].Uses.Contains(Needed.Dollies) && standing.Car.Calendar.Facilities.All(one => one.Kind != FacilityKind.Dollies))
            draft.Notes.Add(Note(move,
                "the car does not roll then, and nothing that carries it is in your calendar: planned as if there were",
                "Own, borrow or hire it, and say so: refettle facility add skates --kind dollies; or move the car while it rolls: put the task before what takes it apart."));
        if (!standing.Parts.Values.Any(Rolling.Carries))
            draft.Notes.Add(Note(move, "nobody has said on which parts the car rolls: taken to roll",
                $"Give its wheels, hubs and springs the role {Rolling.RollsOn} in its sheet."));
        foreach (var before in _move is null ? _here : [.. _here, _move])
            draft.Link(before, move, why: "done before the car moves");
        (_now, _move, _here) = ((to, to is null ? null : named), move, []);
    }

    /// <summary>The last day on which the car can stand there: by its end it has left. Null where nothing ends.</summary>
    private LocalDate? LastDay(string? place) => standing.Car.Calendar.Facilities.FirstOrDefault(one => one.Id == place)?.Until;

    /// <summary>What a task changes of the car, for the moves after it.</summary>
    private void Change(WorkTask task)
    {
        var facts = task.Steps.Select(step => step.Fact).Where(fact => !standing.IsStance(fact));
        if (task.Kind is TaskKind.Strip or TaskKind.Try)
            _done.UnionWith(facts);
        else if (task.Kind == TaskKind.Refit)
            _done.ExceptWith(facts);
        else if (task.Kind == TaskKind.Stance)
            _stance = task.Stance;
    }

    private static string Back(string task) => $"move-back.{task}";

    private static Fault Note(string task, string found, string mend) => new($"task {task}", found, mend) { Severity = Severity.Note };
}
