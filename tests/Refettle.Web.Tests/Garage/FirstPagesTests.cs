using Refettle.Web.Pages;

namespace Refettle.Web.Tests.Garage;

public sealed class FirstPagesTests
{
    [Theory]
    [InlineData("")]
    [InlineData("?all")]
    [InlineData("car/heron-18")]
    [InlineData("car/heron-18#page")]
    public void The_garage_and_a_car_s_own_page_are_shown_first(string path) => Assert.NotNull(FirstPages.At(path));

    [Theory]
    [InlineData("car")]
    [InlineData("car/")]
    [InlineData("car/heron-18/timeline")]
    [InlineData("numbers")]
    public void Every_other_page_waits_for_the_further_part(string path) => Assert.Null(FirstPages.At(path));

    [Theory]
    [InlineData("car/an%20old%20one", "an old one")]
    [InlineData("car/heron-18/bag/14?x#page", "heron-18")]
    [InlineData("car/", null)]
    [InlineData("numbers", null)]
    public void The_car_that_a_page_is_about_is_in_its_address(string path, string? car) => Assert.Equal(car, FirstPages.Car(path));

    [Fact]
    public void The_car_is_named_as_it_is_in_the_address() =>
        Assert.Equal("an old one", FirstPages.At("car/an%20old%20one")!.RouteValues["Id"]);
}
