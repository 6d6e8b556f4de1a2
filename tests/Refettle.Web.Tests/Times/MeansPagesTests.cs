using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Refettle.Logbook;
using Refettle.Server.Tests;
using Refettle.Web.Garage;
using Refettle.Web.Pages;
using Refettle.Web.Stores;
using Refettle.Web.Tests.Garage;
using Refettle.Web.Times;

namespace Refettle.Web.Tests.Times;

/// <summary>Facilities and own tasks by thumb.</summary>
public sealed class MeansPagesTests : BunitContext
{
    private readonly FaultyServer _server = new();

    public MeansPagesTests() => Services.AddGarage(_server);

    private Happening Last => Happenings.Decode(_server.Entries[_server.Entries.Count - 1]).Value!;

    [Fact]
    public async Task A_facility_is_entered_changed_and_taken_out()
    {
        await OpenAsync();
        var page = Render<FacilitiesPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        await page.TouchAsync("#facility-kind", element => element.ChangeAsync("SprayCorner"));
        await page.TouchAsync("#facility-name", element => element.ChangeAsync("Paint tent"));
        await page.TouchAsync("#facility-pieces", element => element.ChangeAsync("6"));
        await page.TouchAsync("#facility-first", element => element.ChangeAsync("2027-03-01"));
        await page.TouchAsync("form", element => element.SubmitAsync());
        page.WaitForAssertion(() => Assert.Contains("Paint tent (a spray corner, 6 pieces fit in at one time, from Mon 2027-03-01)",
            page.Find("ul.plain-list").TextContent));
        await page.TouchAsync("button[aria-label='Change Paint tent']", element => element.ClickAsync());
        await page.TouchAsync("#facility-area", element => element.ChangeAsync("4"));
        await page.TouchAsync("form", element => element.SubmitAsync());
        page.WaitForAssertion(() => Assert.Equal(new FacilityAdded(new()
        {
            Id = "paint-tent",
            Name = "Paint tent",
            Kind = FacilityKind.SprayCorner,
            MostPieces = 6,
            MostSquareMetres = 4,
            From = new(2027, 3, 1)
        }), Last));
        await page.TouchAsync("button[aria-label='Take out Paint tent']", element => element.ClickAsync());
        page.WaitForAssertion(() => Assert.Equal(new FacilityRemoved("paint-tent"), Last));
    }

    [Fact]
    public async Task What_is_wrong_is_said_in_the_form_and_nothing_is_written()
    {
        await OpenAsync();
        var before = _server.Entries.Count;
        var page = Render<FacilitiesPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        await page.TouchAsync("#facility-count", element => element.ChangeAsync("none"));
        await page.TouchAsync("form", element => element.SubmitAsync());
        Assert.Contains("how many there are is “none”", page.Find("form .faults").TextContent);
        Assert.Equal(before, _server.Entries.Count);
    }

    [Fact]
    public async Task A_task_of_ones_own_names_its_place_and_what_it_follows()
    {
        await OpenAsync(new FacilityAdded(new() { Id = "bay", Name = "Bay", Kind = FacilityKind.Place }),
            new TaskAdded(new() { Id = "wash", Name = "Wash", Takes = new(20) }));
        var page = Render<OwnTasksPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        await page.TouchAsync("#task-name", element => element.ChangeAsync("Weld the floor"));
        await page.TouchAsync("#task-minutes", element => element.ChangeAsync("90"));
        await page.TouchAsync(".check input", element => element.ChangeAsync(true), ^1);
        await page.TouchAsync("input[type=search]", element => element.InputAsync("wash"));
        await page.TouchAsync(".found button", element => element.ClickAsync());
        await page.TouchAsync("button.main", element => element.ClickAsync(), ^1);
        page.WaitForAssertion(() => Assert.Equal(new TaskAdded(new()
        { Id = "weld-the-floor", Name = "Weld the floor", Takes = new(90), After = ["wash"], Uses = ["bay"] }), Last));
        Assert.Contains("Weld the floor, 90 min, after Wash, uses Bay", page.Find("ul.plain-list").TextContent);
    }

    private async Task OpenAsync(params Happening[] more)
    {
        await Services.GetRequiredService<OpenCar>().BeginAsync(SmallCar.Id, [.. SmallCar.Happenings, .. more]);
        await Services.GetRequiredService<OpenCar>().OpenAsync(SmallCar.Id);
    }
}
