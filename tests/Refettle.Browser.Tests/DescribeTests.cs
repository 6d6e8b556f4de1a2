using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Sheets;

namespace Refettle.Browser.Tests;

public sealed partial class DescribeTests(Bench bench) : IClassFixture<Bench>
{
    private const int MostTaps = 200;
    private const int FewestParts = 250;

    [NeedsChromiumFact]
    public async Task A_part_and_a_joint_are_described_by_hand_and_a_fault_keeps_them_out()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.GoAsync("edit/part");
        await page.GetByLabel("Name").FillAsync("Axle breather");
        await page.GetByLabel("Mass, kg").FillAsync("-1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.GetByText("mass is -1 kg").WaitForAsync();
        await page.GetByLabel("Mass, kg").FillAsync("0,1");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Axle breather" }).WaitForAsync();

        await page.GetByRole(AriaRole.Link, new() { Name = "New joint" }).ClickAsync();
        await page.GetByLabel("Add a part").FillAsync("rear axle");
        await page.Keyboard.PressAsync("Enter");
        await page.GetByLabel("Kind").SelectOptionAsync("Hose");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep" }).ClickAsync();
        await page.GetByText("What still holds it").WaitForAsync();
        await Assertions.Expect(page.GetByText("Hose: Axle breather – Rear axle").First).ToBeVisibleAsync();

        var car = CarHistory.Of(SmallCar.Id, visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry)).Car;
        Assert.Equal(0.1m, car.Structure.Parts.Single(part => part.Id == "axle-breather").Mass?.Value);
        Assert.Equal(Origin.Default, car.Structure.Joints.Single(joint => joint.Holds.Contains("axle-breather")).Ways[0].Origin);
    }

    [NeedsChromiumFact]
    public async Task A_whole_car_takes_at_most_200_taps()
    {
        var shelf = KitShelf.Load(Path.Combine(Repository.Root, "kits")).Value;
        await using var visit = await bench.VisitAsync(Looks.Phone(), new(shelf.Start, shelf.Kits));
        var (page, taps) = (visit.Page, 0);
        await page.GotoAsync(new Uri(visit.Garage.Address, "?all").ToString());
        await page.GetByLabel("A new car").FillAsync("Whole Heron");
        await TapAsync(page.GetByRole(AriaRole.Button, new() { Name = "Begin" }));
        foreach (var (kit, spots) in Additions(shelf))
        {
            foreach (var spot in spots)
                await TapAsync(page.GetByRole(AriaRole.Button,
                    new() { Name = $"Add {kit.Name} {spot.Words().ToLowerInvariant()}".TrimEnd(), Exact = true }));
        }

        await page.GetByText("All in the logbook").WaitForAsync();
        var car = CarHistory.Of("whole-heron", visit.Garage.Logbook.Read("whole-heron").Select(kept => kept.Entry)).Car;
        Assert.InRange(taps, 1, MostTaps);
        Assert.True(car.Structure.Parts.Count >= FewestParts, $"{car.Structure.Parts.Count} parts after {taps} taps");
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
        await LookAsync(page);

        async Task TapAsync(ILocator button)
        {
            await button.TapAsync();
            taps++;
        }
    }

    /// <summary>A whole car has enough in it to ask of.</summary>
    private static async Task LookAsync(IPage page)
    {
        await page.GetByRole(AriaRole.Link, new() { Name = "Next" }).ClickAsync();
        await page.GetByRole(AriaRole.Searchbox).FillAsync("rear axle");
        await page.Keyboard.PressAsync("Enter");
        await page.Locator(".now").WaitForAsync();
        await Pictures.TakeAsync(page, "car-next");
        await page.GetByRole(AriaRole.Link, new() { Name = "Plan", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Drawing" }).ClickAsync();
        await page.Locator("g.box").First.WaitForAsync();
        await page.Locator(".drawing").EvaluateAsync("drawing => drawing.scrollIntoView()");
        await Pictures.TakeAsync(page, "car-drawing-phone");
        await page.SetViewportSizeAsync(1440, 900);
        await Pictures.TakeAsync(page, "car-laptop");
    }

    /// <summary>The kits of the demo's estate, in its order.</summary>
    private static IEnumerable<(Kits.Kit Kit, ValueList<Spot> Spots)> Additions(KitShelf shelf)
    {
        foreach (var line in File.ReadLines(Path.Combine(Repository.Root, "samples", "estate.commands")))
        {
            if (AddLine().Match(line) is not { Success: true } add)
                continue;
            var kit = shelf.Find(add.Groups["kit"].Value).Value;
            var sides = add.Groups["side"].Captures.Select(side => Spots.TryParse(side.Value, out var spot) ? spot : Spot.None)
                .ToValueList();
            yield return (kit, sides.Count > 0 ? sides : kit.Spots.Count > 0 ? kit.Spots : [Spot.None]);
        }
    }

    [GeneratedRegex(@"^add (?<kit>\S+)(?: --side (?<side>\w+))*\s*$")]
    private static partial Regex AddLine();
}
