using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Replays where the car is: no task is done with the car elsewhere, and a car that does not roll is moved by two
/// people, with something under it.</summary>
internal static class PlaceCheck
{
    private const string Report = "This is a fault of the program: please report it.";

    /// <param name="order">All tasks in the order of their starts.</param>
    public static IEnumerable<Fault> Of(Car car, IReadOnlyList<WorkTask> order)
    {
        var ahead = order.Where(task => task.Mark is not { Progress: TaskProgress.Done }).ToList();
        // Where the car is now nobody asks the derivation: before the first move it is where the first work needs it.
        var at = ahead.TakeWhile(task => task.Kind != TaskKind.Move).FirstOrDefault(task => task.IsAtCar)?.At;
        var done = car.Done.ToHashSet();
        foreach (var task in ahead)
        {
            if (task.Kind == TaskKind.Move)
            {
                at = task.At;
                if (IsUnready(car with { Done = done.ToValueList() }, task))
                    yield return new($"task {task.Id}", "the car does not roll then and is to be pushed", Report);
            }
            else if (task.IsAtCar && task.At != at)
            {
                yield return new($"task {task.Id}",
                    $"the car is to be at {task.At ?? "its usual place"} and is at {at ?? "its usual place"}", Report);
            }

            if (task.Kind is TaskKind.Strip or TaskKind.Try)
                done.UnionWith(task.Steps.Select(step => step.Fact));
            else if (task.Kind == TaskKind.Refit)
                done.ExceptWith(task.Steps.Select(step => step.Fact));
        }
    }

    private static bool IsUnready(Car car, WorkTask move) =>
        Rolling.Against(new(car)).Any() && !(move.Uses.Contains(Needed.Helper) && move.Uses.Contains(Needed.Dollies));
}
