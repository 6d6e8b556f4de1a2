namespace Refettle.Sheets.Reading;

/// <summary>Reads the loose ends that a car was written with.</summary>
internal static class LooseEndReader
{
    public static ValueList<LooseEnd> Read(Fields root) => [];
}
