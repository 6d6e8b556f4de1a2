using System.CommandLine;

namespace Refettle.Cli.Verbs;

internal static class ServeVerb
{
    public static Option<int> Port() => new("--port") { Description = "Where to listen on 127.0.0.1; 0 takes any that is free.", DefaultValueFactory = _ => Serving.UsualPort };

    public static Command Make(Desk desk)
    {
        var port = Port();
        var command = new Command("serve", "Serves the pages on this machine until Ctrl-C.") { port };
        command.SetAction(parsed => (int)new Printer(desk.Around).Show(
            desk.WithLogbook(parsed, logbook => Serving.Run(desk, logbook, parsed.GetValue(port), address => Tell(desk, parsed, address))),
            parsed.GetValue<bool>(GlobalOptions.Json)));
        return command;
    }

    /// <summary>The address comes at once, on the error stream when the answer is JSON.</summary>
    public static void Tell(Desk desk, ParseResult parsed, string address)
    {
        var stream = parsed.GetValue<bool>(GlobalOptions.Json) ? desk.Around.Error : desk.Around.Out;
        stream.WriteLine($"Open {address} in a browser. Ctrl-C ends it.");
        stream.Flush();
    }
}
