using System.CommandLine;

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

    /// <param name="answer">There is no open log for a sheet.</param>
    public Reply With(Desk desk, ParseResult parsed, Func<Car, OpenCar?, Reply> answer) =>
        parsed.GetValue(_sheet) is { } file
            ? Reply.To(SheetFiles.Car(file), car => answer(car, null))
            : desk.WithCar(parsed, open => answer(open.Car, open));
}
