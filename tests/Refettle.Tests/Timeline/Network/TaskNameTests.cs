using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Timeline.Network;

namespace Refettle.Tests.Timeline.Network;

public sealed class TaskNameTests
{
    private static readonly Car Car = new()
    {
        Id = "heron",
        Name = "Heron",
        Structure = new()
        {
            Zones = [new() { Id = "rear", Name = "Rear" }],
            States = [Drained("coolant"), Drained("fuel")],
            Parts =
            [
                new() { Id = "body", Name = "Body", Zone = "rear", Fixed = true },
                new() { Id = "tank", Name = "Tank", Zone = "rear", Out = new() { Off = new(5), On = new(5) } },
            ],
            Joints = [new()
                { Id = "straps", Name = "Tank strap", Count = 2, Holds = ["tank", "body"],
                    Ways = [new()
                        { Id = "w", Tool = "spanner", Open = new(4), Close = new(6),
                            Clear = [Fact.State("fuel-drained"), Fact.State("coolant-drained")] }] }],
        },
    };

    /// <summary>Who reads only the name must see that fuel runs.</summary>
    [Fact]
    public void What_is_drained_is_named_whatever_follows()
    {
        Assert.Equal(["Coolant drained; Fuel drained", "Take off: Tank, 2 steps"], Tasks(TaskKind.Strip).Select(task => task.Says));
        Assert.Equal(["Fit: Tank, 2 steps", "Fill the fuel; Fill the coolant"], Tasks(TaskKind.Refit).Select(task => task.Says));
    }

    [Fact]
    public void The_steps_of_the_way_back_are_told_in_its_own_words() =>
        Assert.Equal(["Fit: Tank", "Close 2 × Tank strap"], Tasks(TaskKind.Refit).First().Steps.Select(step => step.Says));

    private static IEnumerable<WorkTask> Tasks(TaskKind kind)
    {
        var plan = new AccessPlanner(new ReducedSolver()).Reach(Car, Question.For(Fact.Off("tank")));
        return NetworkPlanner.Of(new() { Car = Car, Plan = plan }).Tasks.Where(task => task.Kind == kind);
    }

    private static State Drained(string fluid) => new()
    {
        Id = $"{fluid}-drained",
        Name = $"{char.ToUpperInvariant(fluid[0])}{fluid[1..]} drained",
        Ways = [new() { Id = "w", Tool = "tray", Open = new(5), Close = new(5) }],
    };
}
