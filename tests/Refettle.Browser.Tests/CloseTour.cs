using Microsoft.Playwright;
using Refettle.Logbook;
using Refettle.Server.Tests;

namespace Refettle.Browser.Tests;

/// <summary>Wheel nuts that go back with a torque.</summary>
internal static class CloseTour
{
    public static async Task WalkAsync(Visit visit, Func<string, Task> look)
    {
        var nuts = SmallCar.Structure.Joints.Where(joint => joint.Id.StartsWith("wheel-nuts", StringComparison.Ordinal))
            .Select(joint => joint with { Torque = new(90) });
        Assert.True(visit.Garage.Logbook.Write(SmallCar.Id,
            [new StructureAdded("edit", new() { Joints = nuts.ToValueList() }, []),
                new StepDone(Fact.Open("wheel-nuts-left"), null, null)]).IsGood);
        await visit.GoAsync("close");
        await visit.Page.GetByLabel("The wrench said").WaitForAsync();
        await visit.Page.GetByText("All steps").ClickAsync();
        await visit.Page.GetByText("Wheel alignment").ClickAsync();
        await look("close");
    }
}
