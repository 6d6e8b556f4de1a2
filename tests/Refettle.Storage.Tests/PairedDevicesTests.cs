using System.Security.Cryptography;
using Microsoft.Extensions.Time.Testing;
using Refettle.Storage.Pairing;

namespace Refettle.Storage.Tests;

public sealed class PairedDevicesTests : IDisposable
{
    private readonly Shelf _shelf = new();
    private readonly FakeTimeProvider _clock = new(new(1988, 4, 1, 18, 0, 0, TimeSpan.Zero));
    private readonly LogbookStore _logbook;

    public PairedDevicesTests() => _logbook = LogbookStore.Open(_shelf.File, _clock, RandomNumberGenerator.Create()).Value;

    private PairedDevices Devices => _logbook.Devices;

    public void Dispose()
    {
        _logbook.Dispose();
        _shelf.Dispose();
    }

    [Fact]
    public void A_code_pairs_one_device_once()
    {
        var code = Devices.NewCode().Value;
        var paired = Devices.Pair(code, " phone under the car ").Value;
        Assert.Equal("phone under the car", paired.Device.Name);
        Assert.Equal(paired.Device, Devices.Find(paired.Token));
        Assert.False(Devices.Pair(code, "another").IsGood);
        Assert.Single(Devices.All());
    }

    [Fact]
    public void A_code_may_be_typed_by_a_cold_hand()
    {
        var code = Devices.NewCode().Value;
        var typed = code.Replace("-", " ", StringComparison.Ordinal).ToLowerInvariant().Replace('0', 'o').Replace('1', 'l');
        Assert.True(Devices.Pair(typed, "phone").IsGood);
    }

    [Fact]
    public void A_code_ends_after_its_time_and_another_is_never_accepted()
    {
        var code = Devices.NewCode().Value;
        Assert.False(Devices.Pair("00000-00000", "guess").IsGood);
        _clock.Advance(PairedDevices.CodeLasts);
        Assert.Contains("waiting to be used", Devices.Pair(code, "late").Faults[0].Found, StringComparison.Ordinal);
        Assert.Empty(Devices.All());
    }

    [Fact]
    public void A_revoked_device_is_unknown_and_the_others_stay()
    {
        var (first, second) = (Paired("one"), Paired("two"));
        Assert.True(Devices.Revoke(first.Device.Id).IsGood);
        Assert.Null(Devices.Find(first.Token));
        Assert.Equal(second.Device, Devices.Find(second.Token));
        Assert.False(Devices.Revoke(first.Device.Id).IsGood);
    }

    [Fact]
    public void A_writer_is_known_by_the_name_of_its_last_pairing_beyond_its_end()
    {
        foreach (var device in new[] { Paired("phone").Device, Paired("pit phone").Device })
        {
            Assert.True(Devices.Wrote(device, ["browser-1", "browser-1"]).IsGood);
            Assert.True(Devices.Revoke(device.Id).IsGood);
            Assert.Equal(device.Name, Devices.Names().Of("browser-1"));
        }

        Assert.Equal("browser-2", Devices.Names().Of("browser-2"));
    }

    [Fact]
    public void Neither_code_nor_token_lies_in_the_file()
    {
        var code = Devices.NewCode().Value;
        var token = Paired("phone").Token;
        var copy = Path.Combine(_shelf.Folder, "copy");
        Backup.Make(_logbook, copy);
        var bytes = File.ReadAllText(copy, System.Text.Encoding.Latin1);
        Assert.Contains("phone", bytes, StringComparison.Ordinal);
        Assert.DoesNotContain(code, bytes, StringComparison.Ordinal);
        Assert.DoesNotContain(PairingCode.Plain(code), bytes, StringComparison.Ordinal);
        Assert.DoesNotContain(token, bytes, StringComparison.Ordinal);
    }

    /// <summary>SHA-256 of "abc": FIPS 180-4, the example that NIST publishes with it.</summary>
    [Fact]
    public void The_hash_is_that_of_the_standard() =>
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", PairingCode.Hash("abc"));

    private NewDevice Paired(string name) => Devices.Pair(Devices.NewCode().Value, name).Value;
}
