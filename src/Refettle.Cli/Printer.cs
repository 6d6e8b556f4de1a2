using System.Text.Json;
using Spectre.Console;

namespace Refettle.Cli;

/// <summary>Shows replies.</summary>
internal sealed class Printer(Surroundings around)
{
    public ExitCode Show(Reply reply, bool asJson)
    {
        if (asJson)
            around.Out.WriteLine(JsonSerializer.Serialize(reply.Data, ExchangeJson.Indented));
        else
            ShowText(reply);
        return reply.Code;
    }

    private void ShowText(Reply reply)
    {
        foreach (var fault in reply.Faults)
            around.Error.WriteLine(fault.Severity == Severity.Note ? $"note: {fault}" : $"refettle: {fault}");
        if (ReferenceEquals(reply.Shown, Text.Empty))
            return;
        var text = new StringWriter();
        Console(text).Write(reply.Shown);
        if (text.ToString().TrimEnd().Length == 0)
            return;
        foreach (var line in text.ToString().TrimEnd().Split('\n'))
            around.Out.WriteLine(line.TrimEnd());
    }

    /// <summary>A console that writes into text, so that the blanks which fill its tables can be cut off.</summary>
    private IAnsiConsole Console(TextWriter text)
    {
        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = around.InColour ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = around.InColour ? ColorSystemSupport.Standard : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = around.Width;
        return console;
    }
}
