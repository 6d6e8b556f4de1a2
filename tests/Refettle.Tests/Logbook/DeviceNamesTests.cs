using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class DeviceNamesTests
{
    private static readonly DeviceNames Names =
        new([new("browser-0001aaaaaaaa", "phone"), new("browser-0002bbbbbbbb", "phone"), new("browser-0003cccccccc", "pit phone")]);

    [Theory]
    [InlineData("browser-0003cccccccc", "pit phone")]
    [InlineData("browser-0001aaaaaaaa", "phone (aaaaaaaa)")]
    [InlineData("browser-0002bbbbbbbb", "phone (bbbbbbbb)")]
    [InlineData("device-9", "device-9")]
    public void A_device_is_called_as_it_was_paired_and_never_mistaken_for_another(string device, string called) =>
        Assert.Equal(called, Names.Of(device));
}
