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
        page.WaitForElement("#facility-kind").Change("SprayCorner");
        page.Find("#facility-name").Change("Paint tent");
        page.Find("#facility-pieces").Change("6");
        page.Find("#facility-first").Change("2027-03-01");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Contains("Paint tent (a spray corner, 6 pieces fit in at one time, from Mon 2027-03-01)",
            page.Find("ul.plain-list").TextContent));
        page.Find("button[aria-label='Change Paint tent']").Click();
        page.Find("#facility-area").Change("4");
        await page.Find("form").SubmitAsync();
        page.WaitForAssertion(() => Assert.Equal(new FacilityAdded(new()
        {
            Id = "paint-tent",
            Name = "Paint tent",
            Kind = FacilityKind.SprayCorner,
            MostPieces = 6,
            MostSquareMetres = 4,
            From = new(2027, 3, 1)
        }), Last));
        page.Find("button[aria-label='Take out Paint tent']").Click();
        page.WaitForAssertion(() => Assert.Equal(new FacilityRemoved("paint-tent"), Last));
    }

    [Fact]
    public async Task What_is_wrong_is_said_in_the_form_and_nothing_is_written()
    {
        await OpenAsync();
        var before = _server.Entries.Count;
        var page = Render<FacilitiesPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        page.WaitForElement("#facility-count").Change("none");
        await page.Find("form").SubmitAsync();
        Assert.Contains("how many there are is “none”", page.Find("form .faults").TextContent);
        Assert.Equal(before, _server.Entries.Count);
    }

    [Fact]
    public async Task A_task_of_ones_own_names_its_place_and_what_it_follows()
    {
        await OpenAsync(new FacilityAdded(new() { Id = "bay", Name = "Bay", Kind = FacilityKind.Place }),
            new TaskAdded(new() { Id = "wash", Name = "Wash", Takes = new(20) }));
        var page = Render<OwnTasksPage>(parameters => parameters.Add(shown => shown.Id, SmallCar.Id));
        page.WaitForElement("#task-name").Change("Weld the floor");
        page.Find("#task-minutes").Change("90");
        page.FindAll(".check input")[^1].Change(true);
        page.FindAll("input[type=search]")[0].Input("wash");
        page.WaitForElement(".found button").Click();
        page.FindAll("button.main")[^1].Click();
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
