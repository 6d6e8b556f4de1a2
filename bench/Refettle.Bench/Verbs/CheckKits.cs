using Refettle.Sheets;

namespace Refettle.Bench.Verbs;

/// <summary>Reads every kit and sample and prints all faults with file, line and column.</summary>
internal static class CheckKits
{
    public static int Run(string[] args)
    {
        var kits = args.ElementAtOrDefault(0) ?? "kits";
        var samples = args.ElementAtOrDefault(1) ?? "samples";
        var shelf = KitShelf.Load(kits);
        List<Fault> faults = [.. shelf.Faults, .. shelf.IsGood ? shelf.Value.Faults : []];
        var sheets = Directory.Exists(samples) ? Directory.GetFiles(samples, "*.yaml") : [];
        foreach (var sheet in sheets.Order(StringComparer.Ordinal))
            faults.AddRange(SheetReader.Read(File.ReadAllBytes(sheet), sheet).Faults);
        foreach (var fault in faults)
            Console.WriteLine(fault);
        var good = shelf.IsGood ? shelf.Value.Kits.Count : 0;
        Console.WriteLine($"{good} kits and {sheets.Length} sheets read, {faults.Count} faults");
        return faults.Any(fault => fault.Severity == Severity.Error) ? 1 : 0;
    }
}
