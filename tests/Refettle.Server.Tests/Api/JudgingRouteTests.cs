using System.Text.Json;
using Refettle.Sheets;
using Refettle.Stuck;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class JudgingRouteTests
{
    [Fact]
    public void The_ladders_come_over_the_wire_as_they_are()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !Directory.Exists(Path.Combine(folder.FullName, "ladders")))
            folder = folder.Parent;
        var ladders = LadderReader.Load(Path.Combine(folder!.FullName, "ladders")).Value;
        Assert.Equal(ladders,
            JsonSerializer.Deserialize<LadderSet>(JsonSerializer.Serialize(ladders, ExchangeJson.Options), ExchangeJson.Options));
    }

    [Fact]
    public async Task A_verdict_comes_with_its_sums()
    {
        await using var garage = await TestGarage.OpenAsync();
        var server = new ServerApi(new() { BaseAddress = garage.Address });
        var reply = await server.VerdictsAsync(SmallCar.Id, new(["rear-axle"], [], null));
        Assert.True(reply.IsGood, string.Join("; ", reply.Faults));
        Assert.Equal("rear-axle", Assert.Single(reply.Value).Part);
        Assert.False((await server.VerdictsAsync(SmallCar.Id, new(["nothing"], [], null))).IsGood);
    }

    [Fact]
    public async Task A_joint_that_no_ladder_frees_is_told_and_an_unknown_one_refused()
    {
        await using var garage = await TestGarage.OpenAsync();
        var server = new ServerApi(new() { BaseAddress = garage.Address });
        Assert.False((await server.OpenUpAsync(SmallCar.Id, new(["nothing"]))).IsGood);
        Assert.False((await server.OpenUpAsync(SmallCar.Id, new([]))).IsGood);
    }
}
