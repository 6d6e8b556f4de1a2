using Refettle.Sheets.Writing;

namespace Refettle.Sheets;

/// <summary>Writes car sheets that <see cref="SheetReader"/> reads back to the same structure.</summary>
public static class SheetWriter
{
    /// <summary>The whole sheet as YAML.</summary>
    public static string Write(CarSheet sheet)
    {
        var text = new YamlText();
        text.Number("refettle", SheetReader.Version);
        text.Below("car", () =>
        {
            text.Text("name", sheet.Name);
            text.Number("year", sheet.Year);
            text.Text("currency", sheet.Currency);
        });
        StructureText.Write(text, sheet.Structure);
        return text.ToString();
    }
}
