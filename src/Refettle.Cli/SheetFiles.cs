using Refettle.Cli.Commands;
using Refettle.Sheets;

namespace Refettle.Cli;

/// <summary>Reads cars from files: a sheet in YAML, or a table of parts and one of joints in CSV.</summary>
internal static class SheetFiles
{
    /// <summary>The car that a sheet describes, as it stands on its first day.</summary>
    public static Result<Car> Car(string file)
    {
        var sheet = Read([file]);
        return sheet.IsGood ? Result<Car>.Good(CarOf(sheet.Value, file), sheet.Faults) : Result<Car>.Bad(sheet.Faults);
    }

    /// <param name="files">One sheet in YAML, or two tables in CSV: parts, joints.</param>
    public static Result<CarSheet> Read(IReadOnlyList<string> files)
    {
        var bytes = TextFile.Bytes(files[0]);
        return bytes.IsGood ? SheetReader.Read(bytes.Value, files[0]) : Result<CarSheet>.Bad(bytes.Faults);
    }

    public static Car CarOf(CarSheet sheet, string file) => new()
    {
        Id = Identifier.From(Path.GetFileNameWithoutExtension(file)) is { Length: > 0 } id ? id : "sheet",
        Name = sheet.Name,
        Year = sheet.Year,
        Currency = sheet.Currency,
        Structure = sheet.Structure,
    };
}
