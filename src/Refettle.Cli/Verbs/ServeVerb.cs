using System.CommandLine;
using Refettle.Logbook;
using Refettle.Storage;

namespace Refettle.Cli.Verbs;

internal static class ServeVerb
{
    public static Option<int> Port() => new("--port") { Description = "Where to listen; 0 takes any that is free.", DefaultValueFactory = _ => Serving.UsualPort };

    public static Command Make(Desk desk)
    {
        var port = Port();
        var toNetwork = new Option<bool>("--lan") { Description = "Also for phones on the network that are paired; shows a code that pairs one." };
        var command = new Command("serve", "Serves the pages on this machine until Ctrl-C.") { port, toNetwork };
        command.SetAction(parsed => (int)new Printer(desk.Around).Show(
            desk.WithLogbook(parsed, logbook => Serving.Run(desk, logbook, parsed.GetValue(port), parsed.GetValue(toNetwork), address =>
            {
                Tell(desk, parsed, address);
                if (parsed.GetValue(toNetwork))
                    Invite(desk, parsed, logbook, address.Port);
            })), parsed.GetValue<bool>(GlobalOptions.Json)));
        return command;
    }

    /// <summary>The address comes at once, on the error stream when the answer is JSON.</summary>
    public static void Tell(Desk desk, ParseResult parsed, Uri address) => Say(desk, parsed, $"Open {address} in a browser. Ctrl-C ends it.");

    private static void Invite(Desk desk, ParseResult parsed, ILogbook logbook, int port)
    {
        var invitation = DeviceVerbs.Invite(((IGarageStore)logbook).Devices, port);
        Say(desk, parsed, invitation.IsGood ? $"\n{DeviceVerbs.Words(invitation.Value)}\nFor one more phone: refettle pair. Use a network you trust: what goes over it is not encrypted." : $"{invitation.Faults[0]}");
    }

    private static void Say(Desk desk, ParseResult parsed, string line)
    {
        var stream = parsed.GetValue<bool>(GlobalOptions.Json) ? desk.Around.Error : desk.Around.Out;
        stream.WriteLine(line);
        stream.Flush();
    }
}
