using Refettle.Cli.Commands;
using Refettle.Sheets;

namespace Refettle.Cli;

/// <summary>Reads cars from files: a sheet in YAML, or tables of parts and joints in CSV.</summary>
internal static class SheetFiles
{
    /// <summary>The car that a sheet describes, as it stands on its first day.</summary>
    public static Result<Car> Car(string file)
    {
        var sheet = Sheet(file);
        return sheet.IsGood ? Result<Car>.Good(CarOf(sheet.Value, file), sheet.Faults) : Result<Car>.Bad(sheet.Faults);
    }

    /// <summary>What files bring to a car.</summary>
    /// <param name="files">One sheet in YAML; or tables in CSV: parts, joints if there are any yet.</param>
    /// <param name="car">What the car has; tables may name its parts, zones and states.</param>
    public static Result<Structure> Structure(IReadOnlyList<string> files, Structure car)
    {
        if (files.All(IsTable))
            return Tables(files[0], files.Count > 1 ? files[1] : null, car);
        if (files.Count > 1)
            return Result<Structure>.Bad(new Fault(string.Join(' ', files), "these are not one sheet, nor two tables",
                "Give one .yaml file, or two .csv files: parts, then joints."));
        var sheet = Sheet(files[0]);
        return sheet.IsGood ? Result<Structure>.Good(sheet.Value.Structure, sheet.Faults) : Result<Structure>.Bad(sheet.Faults);
    }

    private static Result<CarSheet> Sheet(string file)
    {
        var bytes = TextFile.Bytes(file);
        return bytes.IsGood ? SheetReader.Read(bytes.Value, file) : Result<CarSheet>.Bad(bytes.Faults);
    }

    private static Result<Structure> Tables(string parts, string? joints, Structure car)
    {
        var first = TextFile.Text(parts);
        var second = joints is null ? Result<string>.Good("") : TextFile.Text(joints);
        return first.IsGood && second.IsGood
            ? SpreadsheetReader.Read(first.Value, parts, second.Value, joints ?? "", car)
            : Result<Structure>.Bad([.. first.Faults, .. second.Faults]);
    }

    private static Car CarOf(CarSheet sheet, string file) => new()
    {
        Id = Identifier.From(Path.GetFileNameWithoutExtension(file)) is { Length: > 0 } id ? id : "sheet",
        Name = sheet.Name,
        Year = sheet.Year,
        Currency = sheet.Currency,
        Structure = sheet.Structure,
        Stance = sheet.Structure.States.Any(state => state.IsStance && state.Id == Refettle.Car.OnWheels) ? Refettle.Car.OnWheels : null,
    };

    private static bool IsTable(string file) => file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase);
}
