using Refettle.Checks;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Checks;

public sealed class DoublesTests
{
    [Fact]
    public void A_drum_beside_a_disc_is_noted_and_one_at_another_corner_is_not()
    {
        var history = SmallCar.After(new StructureAdded("disc fl", Only("fl-disc", "brake-disc"), []));
        var note = Assert.Single(HappeningCheck.Of(history, new StructureAdded("drum fl", Only("fl-drum", "brake-drum"), [])));
        Assert.Equal((Severity.Note, "the car has fl-disc there already"), (note.Severity, note.Found));
        Assert.Empty(HappeningCheck.Of(history, new StructureAdded("drum rl", Only("rl-drum", "brake-drum"), [])));
        Assert.Empty(HappeningCheck.Of(history, new StructureAdded("disc fl", Only("fl-disc", "brake-disc"), [])));
    }

    private static Structure Only(string id, string role) =>
        new() { Parts = [new() { Id = id, Name = id, Zone = "rear", Roles = [role] }] };
}
