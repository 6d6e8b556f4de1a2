using System.CommandLine;
using Refettle.Logbook;

namespace Refettle.Cli.Verbs;

/// <summary>Where the car of a question comes from: a sheet on disk, or the store.</summary>
internal sealed class CarSource
{
    private readonly Option<string> _sheet = new("--sheet")
    {
        Description = "Ask about the car of this sheet; the store is left alone.",
        HelpName = "file",
    };

    public Command AddTo(Command command)
    {
        command.Add(_sheet);
        return command;
    }

    public Reply With(Desk desk, ParseResult parsed, Func<Car, Reply> answer) => With(desk, parsed, (car, _) => answer(car));

    /// <param name="answer">The history is null for a sheet, which has none.</param>
    public Reply With(Desk desk, ParseResult parsed, Func<Car, CarHistory?, Reply> answer) =>
        parsed.GetValue(_sheet) is { } file
            ? Reply.To(SheetFiles.Car(file), car => answer(car, null))
            : desk.WithCar(parsed, open => answer(open.Car, open.History));
}
