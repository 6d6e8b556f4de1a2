namespace Refettle.Cli.Tests.Verbs;

public sealed class DeviceVerbTests
{
    [Fact]
    public void A_garage_without_devices_says_how_to_pair_one()
    {
        using var bench = new Bench().WithCar();
        Assert.Contains("serve --lan", bench.Out("devices"), StringComparison.Ordinal);
        Assert.Empty(bench.Json("devices").GetProperty("devices").EnumerateArray());
    }

    [Fact]
    public void An_unknown_device_cannot_be_unpaired()
    {
        using var bench = new Bench().WithCar();
        Assert.Equal(ExitCode.Faults, bench.Run("unpair", "abc"));
        Assert.Contains("device abc", bench.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_code_is_shown_as_a_picture_and_in_letters()
    {
        using var bench = new Bench().WithCar();
        var answer = bench.Json("pair", "--port", "5199");
        if (bench.Code == ExitCode.Good)
            Assert.EndsWith($":5199/pair?code={answer.GetProperty("code").GetString()}", answer.GetProperty("address").GetString(),
                StringComparison.Ordinal);
        else
            Assert.Contains("no address that others could reach", bench.Error, StringComparison.Ordinal);
    }
}
