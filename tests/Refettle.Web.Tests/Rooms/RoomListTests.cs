using System.Reflection;
using Microsoft.AspNetCore.Components;
using Refettle.Web.Pages;
using Refettle.Web.Rooms;

namespace Refettle.Web.Tests.Rooms;

public sealed class RoomListTests
{
    private static readonly HashSet<string> _routes =
        typeof(MorePage).Assembly.GetTypes().SelectMany(page => page.GetCustomAttributes<RouteAttribute>()).Select(route => route.Template)
            .ToHashSet();

    [Fact]
    public void Every_room_is_a_page_that_exists() =>
        Assert.All(RoomList.All, room => Assert.Contains($"/{room.Address("{Id}")}", _routes));

    [Fact]
    public void No_room_or_question_is_listed_twice()
    {
        Assert.Distinct(RoomList.All.Select(room => room.Name));
        Assert.Distinct(RoomList.All.Select(room => room.Page));
        var asked = RoomList.All.Select(room => room.Question).ToList();
        Assert.Equal(asked.Distinct().Count(), asked.Where((question, place) => place == 0 || asked[place - 1] != question).Count());
    }

    [Fact]
    public void Every_question_asks_and_every_room_answers_in_a_sentence() => Assert.All(RoomList.All, room =>
    {
        Assert.EndsWith("?", room.Question, StringComparison.Ordinal);
        Assert.EndsWith(".", room.Says, StringComparison.Ordinal);
    });
}
