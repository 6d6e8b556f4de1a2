using System.CommandLine;
using Refettle.Logbook;
using Refettle.Server.Pairing;
using Refettle.Storage;

namespace Refettle.Cli.Verbs;

internal static class ServeVerb
{
    public static Option<int> Port() =>
        new("--port") { Description = "Where to listen; 0 takes any that is free.", DefaultValueFactory = _ => Serving.UsualPort };

    public static Command Make(Desk desk)
    {
        var port = Port();
        var toNetwork = new Option<bool>("--lan")
        { Description = "Also for phones on the network that are paired; shows a code that pairs one." };
        var encrypted = new Option<bool>("--https")
        { Description = "With --lan: also encrypted, at the next port, under an authority of this machine's own that each phone is told once to trust." };
        var command = new Command("serve", "Serves the pages on this machine until Ctrl-C.") { port, toNetwork, encrypted };
        command.SetAction(parsed => (int)new Printer(desk.Around).Show(
            desk.WithLogbook(parsed,
                store => Run(desk, parsed, store, parsed.GetValue(port), Asked(parsed.GetValue(toNetwork), parsed.GetValue(encrypted)))),
            parsed.GetValue<bool>(GlobalOptions.Json)));
        return command;
    }

    /// <summary>The address comes at once, on the error stream when the answer is JSON.</summary>
    public static void Tell(Desk desk, ParseResult parsed, Uri address) =>
        Say(desk, parsed, $"Open {address} in a browser. Ctrl-C ends it.");

    private static Reach Asked(bool toNetwork, bool encrypted) =>
        !toNetwork ? Reach.ThisMachine : encrypted ? Reach.NetworkEncrypted : Reach.Network;

    private static Reply Run(Desk desk, ParseResult parsed, IGarageStore store, int port, Reach reach) =>
        Serving.Run(desk, store, port, reach, address =>
    {
        Tell(desk, parsed, address);
        if (reach != Reach.ThisMachine)
            Say(desk, parsed, Invitation(store, address.Port, reach));
    });

    private static string Invitation(IGarageStore store, int port, Reach reach)
    {
        var invitation = DeviceVerbs.Invite(store.Devices, port);
        if (!invitation.IsGood)
            return $"{invitation.Faults[0]}";
        var host = new Uri(invitation.Value.Address).Host;
        return $"\n{DeviceVerbs.Words(invitation.Value)}\nFor one more phone: refettle pair. " + (reach == Reach.Network
            ? "Use a network you trust: what goes over it is not encrypted."
            : $"\nThen, encrypted: fetch http://{host}:{port}{PairingRoutes.AuthorityPath} on the phone, trust it in the phone's settings, and open https://{host}:{port + 1}.");
    }

    private static void Say(Desk desk, ParseResult parsed, string line)
    {
        var stream = parsed.GetValue<bool>(GlobalOptions.Json) ? desk.Around.Error : desk.Around.Out;
        stream.WriteLine(line);
        stream.Flush();
    }
}
