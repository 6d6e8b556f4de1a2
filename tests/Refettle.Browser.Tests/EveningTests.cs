using Microsoft.Playwright;
using Refettle.Imaging;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Storage;

namespace Refettle.Browser.Tests;

/// <summary>An evening under the car with a phone: a bag, steps, a stuck bolt, a photo, a line, an hour
/// without Wi-Fi, the lid closed.</summary>
public sealed class EveningTests(Bench bench) : IClassFixture<Bench>
{
    [NeedsChromiumFact]
    public async Task All_that_was_noted_is_there_afterwards()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.AskForAxleAsync();

        await PackBagAsync(visit);
        await page.GetByRole(AriaRole.Link, new() { Name = "Next", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 of 13 done")).ToBeVisibleAsync();

        await visit.GoOfflineAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("2 of 13 done")).ToBeVisibleAsync();
        await SayAsync(page, "left leaf spring body bolt held after 2 soaks", "Tried: Bolt: Rear left leaf spring – Body shell");
        await SayAsync(page, "rear right damper leaks, need 1", "Condition: Rear right damper, drips, 1 new into the basket");
        await TakePhotoAsync(page);
        await Assertions.Expect(page.GetByText("photos kept on this device")).ToBeVisibleAsync();
        Assert.Empty(Kinds(visit, "tried"));

        // The tab is closed and opened again, with the network back: what was kept in the browser is sent.
        await page.CloseAsync();
        await visit.Context.SetOfflineAsync(false);
        var later = await visit.Context.NewPageAsync();
        await later.GotoAsync(new Uri(visit.Garage.Address, $"car/{SmallCar.Id}/log").ToString());
        await Assertions.Expect(later.GetByText("All in the logbook")).ToBeVisibleAsync();

        var history = CarHistory.Of(SmallCar.Id, visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry));
        Assert.Equal(2, Kinds(visit, "step-done").Count + Kinds(visit, "stance-taken").Count);
        Assert.Equal("shackle-left", Assert.Single(history.Car.Tries).Joint);
        Assert.Contains("four washers", Assert.Single(history.Car.Bags).Holds[0], StringComparison.Ordinal);
        Assert.Equal(("part damper-right", "drips"), (Assert.Single(history.Car.Findings).Of, history.Car.Findings[0].Word));
        await PhotoIsThereAsync(visit, Assert.Single(history.Car.Photos));
        await Assertions.Expect(later.GetByText("rear right damper leaks, need 1")).ToBeVisibleAsync();
        Assert.True(!visit.Complaints.Any(), string.Join("\n", visit.Complaints));
    }

    [NeedsChromiumFact]
    public async Task A_page_is_loaded_anew_while_the_server_is_away()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.AskForAxleAsync();
        await page.WaitForFunctionAsync(
            "async () => { const kept = await (await caches.open('pages')).keys(); return kept.some(one => one.url.includes('dotnet.native')) && kept.some(one => one.url.endsWith('/index.html')) && kept.some(one => one.url.includes('Refettle.Web')); }");
        await visit.GoAsync("");
        await visit.Garage.StopServingAsync();
        await page.ReloadAsync();
        await Assertions.Expect(page.Locator(".now")).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Done", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByText("1 kept on this device")).ToBeVisibleAsync();
    }

    [NeedsChromiumFact]
    public async Task A_kept_line_a_photo_and_a_bag_are_undone_by_one_tap()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        await visit.GoAsync("part/damper-left");
        await SayAsync(page, "leaks", "Condition: Rear left damper");
        await page.Locator(".quick").GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator(".quick").GetByRole(AriaRole.Button, new() { Name = "Undo" })).ToBeHiddenAsync();
        await TakePhotoAsync(page);
        await page.GetByText("Photo kept").Locator("..").GetByRole(AriaRole.Button, new() { Name = "Undo" }).ClickAsync();
        await Assertions.Expect(page.Locator(".photos img")).ToHaveCountAsync(0);
        await Assertions.Expect(page.GetByText("All in the logbook")).ToBeVisibleAsync();
        var car = CarHistory.Of(SmallCar.Id, visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry));
        Assert.Empty(car.Car.Photos);
        Assert.DoesNotContain(car.Lines, line => line is { Standing: Standing.InForce, Happening: Found });
    }

    [NeedsChromiumFact]
    public async Task A_photo_that_the_browser_cannot_show_is_told_and_nothing_is_written()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        await visit.GoAsync("part/damper-left");
        await visit.Page.Locator("input[type=file]")
            .SetInputFilesAsync(new FilePayload
            { Name = "IMG_0001.HEIC", MimeType = "image/heic", Buffer = [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8] });
        await Assertions.Expect(visit.Page.GetByText("it is a HEIC picture")).ToBeVisibleAsync();
        Assert.Empty(Kinds(visit, "photo-taken"));
        await TakePhotoAsync(visit.Page);
    }

    [NeedsChromiumFact]
    public async Task Of_500_photos_a_page_shows_few_at_a_time()
    {
        await using var visit = await bench.VisitAsync(Looks.Phone());
        var page = visit.Page;
        visit.Garage.Logbook.Write(SmallCar.Id,
            Enumerable.Range(0, 500)
                .Select(number => new PhotoTaken(new() { Hash = $"{number:x64}", Width = 1600, Height = 1200, Of = ["part rear-axle"] })));
        await visit.GoAsync("photos");
        await Assertions.Expect(page.GetByText("500 photos")).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator(".photos img")).ToHaveCountAsync(24);
        await page.GetByRole(AriaRole.Button, new() { Name = "Earlier photos (476)" }).ClickAsync();
        await Assertions.Expect(page.Locator(".photos img")).ToHaveCountAsync(48);
        await visit.GoAsync("part/rear-axle");
        await Assertions.Expect(page.Locator(".photos img")).ToHaveCountAsync(24);
    }

    private static List<Entry> Kinds(Visit visit, string kind) =>
        [.. visit.Garage.Logbook.Read(SmallCar.Id).Select(kept => kept.Entry).Where(entry => entry.Kind == kind)];

    private static async Task PackBagAsync(Visit visit)
    {
        var page = visit.Page;
        await page.GetByRole(AriaRole.Link, new() { Name = "More", Exact = true }).ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Bags" }).ClickAsync();
        await page.GetByLabel("Code on the bag").FillAsync("14");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open", Exact = true }).ClickAsync();
        await page.GetByLabel("What is in it").FillAsync("four washers, thick ones outside");
        await page.GetByRole(AriaRole.Button, new() { Name = "Open the bag" }).ClickAsync();
        await Assertions.Expect(page.GetByText("four washers, thick ones outside")).ToBeVisibleAsync();
    }

    private static async Task SayAsync(IPage page, string line, string understood)
    {
        await page.GetByLabel("Say it in a line").FillAsync(line);
        await Assertions.Expect(page.Locator(".understood")).ToContainTextAsync(understood);
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep this" }).ClickAsync();
        await Assertions.Expect(page.Locator(".quick")).ToContainTextAsync("Kept: ");
    }

    private static async Task TakePhotoAsync(IPage page)
    {
        await page.Locator("input[type=file]").SetInputFilesAsync(Path.Combine(AppContext.BaseDirectory, "Files", "phone.jpg"));
        await Assertions.Expect(page.GetByText("Photo kept")).ToBeVisibleAsync();
    }

    /// <summary>The file was taken on its side (orientation 6): 48 × 32 as stored is 32 × 48 as seen.</summary>
    private static async Task PhotoIsThereAsync(Visit visit, Photo photo)
    {
        Assert.Equal((32, 48), (photo.Width, photo.Height));
        var store = PhotoStore.Beside(visit.Garage.Logbook.Path);
        foreach (var hash in new[] { photo.Hash, photo.Small! })
        {
            var bytes = await File.ReadAllBytesAsync(store.PathOf(hash)!);
            Assert.Equal(PictureForm.Jpeg, PictureFile.FormOf(bytes));
            Assert.DoesNotContain("GPS", System.Text.Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
        }
    }
}
