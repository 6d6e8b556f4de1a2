using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using Refettle.Storage.Pairing;

namespace Refettle.Server.Pairing;

/// <summary>By which names this server is called, and who may come in over the network.</summary>
/// <param name="Hosts">Host names and addresses that requests may be sent to.</param>
/// <param name="Devices">Who may come in from other machines; null when it listens on this machine alone.</param>
public sealed record Doorway(ValueList<string> Hosts, PairedDevices? Devices)
{
    private static readonly string[] OwnNames = ["127.0.0.1", "localhost", "[::1]"];

    /// <summary>For this machine alone.</summary>
    public static Doorway Closed { get; } = new(OwnNames.ToValueList(), null);

    /// <summary>For the devices that are paired, under the addresses this machine has now.</summary>
    public static Doorway For(PairedDevices devices) =>
        new([.. OwnNames, .. Addresses(), .. Names()], devices);

    /// <summary>The IPv4 addresses under which others on the network find this machine, likeliest first.</summary>
    public static ValueList<string> Addresses() => NetworkInterface.GetAllNetworkInterfaces()
        .Where(one => one.OperationalStatus == OperationalStatus.Up && one.NetworkInterfaceType != NetworkInterfaceType.Loopback)
        .OrderByDescending(one => one.GetIPProperties().GatewayAddresses.Count)
        .SelectMany(one => one.GetIPProperties().UnicastAddresses)
        .Where(address => address.Address.AddressFamily == AddressFamily.InterNetwork && !IPAddress.IsLoopback(address.Address))
        .Select(address => address.Address.ToString()).Distinct().ToValueList();

    /// <summary>The names under which others on the network may find this machine.</summary>
    public static ValueList<string> Names() =>
        [Environment.MachineName.ToLowerInvariant(), $"{Environment.MachineName.ToLowerInvariant()}.local"];
}
