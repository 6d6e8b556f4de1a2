using System.CommandLine;
using Refettle.Logbook;
using Refettle.Server.Pairing;
using Refettle.Storage;
using Refettle.Storage.Pairing;
using Spectre.Console;

namespace Refettle.Cli.Verbs;

/// <summary>Which phones and other machines may use the garage over the network.</summary>
internal static class DeviceVerbs
{
    public static Command Pair(Desk desk)
    {
        var port = ServeVerb.Port();
        return new Command("pair", "Shows a code that pairs one phone with the garage; the pages must be served with --lan.") { port }
            .Answers(desk, parsed => WithDevices(desk, parsed, devices => Reply.To(Invite(devices, parsed.GetValue(port)), Shown)));
    }

    public static Command List(Desk desk) => new Command("devices", "The devices that may use the garage over the network.")
        .Answers(desk, parsed => WithDevices(desk, parsed, devices => Listed(desk, devices.All())));

    public static Command Unpair(Desk desk)
    {
        var device = new Argument<string>("device") { Description = "As devices names it." };
        return new Command("unpair", "Turns a device away from now on; what it wrote stays.") { device }
            .Answers(desk, parsed => WithDevices(desk, parsed, devices => Reply.To(devices.Revoke(parsed.GetRequiredValue(device)),
                gone => Reply.Said($"{gone.Name} ({gone.Id}) is no longer paired.", gone))));
    }

    /// <summary>Makes a code and says where to use it.</summary>
    public static Result<Invitation> Invite(PairedDevices devices, int port)
    {
        if (Doorway.Addresses() is not { Count: > 0 } addresses)
            return Result<Invitation>.Bad(new Fault("the network", "this machine has no address that others could reach",
                "Join it to the same network as the phone."));
        var code = devices.NewCode();
        return code.IsGood
            ? Result<Invitation>.Good(Invitation.Of($"http://{addresses[0]}:{port}", code.Value))
            : Result<Invitation>.Bad(code.Faults);
    }

    /// <summary>The picture to scan, and the same in words.</summary>
    public static string Words(Invitation invitation) =>
        $"{invitation.InTerminal()}\nScan this with the phone, or open {invitation.Address[..invitation.Address.IndexOf('?', StringComparison.Ordinal)]} there and type {invitation.Code}.\n"
        + $"The code works once, for {PairedDevices.CodeLasts.TotalMinutes:0} minutes.";

    private static Reply Shown(Invitation invitation) => new(new Text(Words(invitation)), invitation);

    private static Reply Listed(Desk desk, ValueList<PairedDevice> devices) => Reply.Said(
        devices.Count == 0 ? "No device is paired. To pair one: refettle serve --lan." : string.Join('\n', devices.Select(device =>
            $"{device.Id}  {device.Name}, since {TimeZoneInfo.ConvertTime(device.Since, desk.Around.Clock.LocalTimeZone):yyyy-MM-dd HH:mm}")),
        new { devices });

    private static Reply WithDevices(Desk desk, ParseResult parsed, Func<PairedDevices, Reply> answer) =>
        desk.WithLogbook(parsed, store => answer(store.Devices));
}
