using Refettle.Checks;
using Refettle.Sheets.Reading;
using Refettle.Sheets.Tree;

namespace Refettle.Sheets;

/// <summary>Reads car sheets.</summary>
public static class SheetReader
{
    /// <summary>The newest version of the format that is read.</summary>
    public const int Version = 1;

    /// <summary>Reads the bytes of a file in UTF-8.</summary>
    /// <param name="file">Its name, for the faults.</param>
    public static Result<CarSheet> Read(ReadOnlySpan<byte> bytes, string file)
    {
        var text = FileText.Decode(bytes, file);
        return text.IsGood ? Read(text.Value, file) : Result<CarSheet>.Bad(text.Faults);
    }

    /// <summary>Reads a sheet, or reports all its faults in the order of the file.</summary>
    public static Result<CarSheet> Read(string text, string file)
    {
        var good = FileText.Check(text, file);
        if (!good.IsGood)
            return Result<CarSheet>.Bad(good.Faults);
        var faults = new FaultList(file);
        if (YamlTree.Read(good.Value, faults) is not { } root)
            return Result<CarSheet>.Bad(faults.ToList());
        var sheet = Sheet(new(root, "file", new(faults, Origin.User, Braces: null)), faults);
        return faults.HasErrors ? Result<CarSheet>.Bad(faults.ToList()) : Result<CarSheet>.Good(sheet, faults.ToList());
    }

    private static CarSheet Sheet(Fields root, FaultList faults)
    {
        CheckVersion(root, "refettle");
        var places = new Places();
        var sheet = Head(root) with { Structure = StructureReader.Read(root, places) with { LooseEnds = LooseEndReader.Read(root) } };
        root.Done();
        foreach (var fault in StructureCheck.Of(sheet.Structure))
            faults.Add(places.Locate(fault));
        return sheet;
    }

    /// <summary>Reports a version that is missing or not known.</summary>
    internal static void CheckVersion(Fields root, string key)
    {
        if (!root.Has(key))
            root.Missing(key, $"{Version} (the version of the format)");
        else if (root.Whole(key) is { } version and not Version)
            root.Fault(root.Take(key)!, $"the format has version {version}", version > Version
                ? $"This program reads version {Version}: use a newer program"
                : $"Write {key}: {Version}");
    }

    private static CarSheet Head(Fields root)
    {
        if (root.Below("car") is not { } head)
        {
            root.Missing("car", "{ name: … }");
            return new();
        }

        var sheet = new CarSheet
        {
            Name = head.Needed("name", "what you call the car"),
            Year = head.Whole("year"),
            Currency = head.Text("currency") ?? "EUR",
        };
        if (sheet.Year is < 1860 or > 2100)
            head.Fault(head.Take("year")!, $"the year is {sheet.Year}", "Give a year from 1860 to 2100, or leave it out");
        if (sheet.Currency.Length != 3 || !sheet.Currency.All(char.IsAsciiLetterUpper))
            head.Fault(head.Take("currency")!, $"the currency is \"{sheet.Currency}\"", "Write the three letters of ISO 4217, like EUR");
        head.Done();
        return sheet;
    }
}
