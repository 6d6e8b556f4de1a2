namespace Refettle.SaleFile;

/// <summary>A sale file before it is laid out: what is said, and on what it rests.</summary>
/// <param name="Made">When it was made.</param>
/// <param name="Fingerprint">Of the key that signs it.</param>
/// <param name="Entries">The whole log, in the order of the numbers.</param>
public sealed record SaleDocument(
    string Title, string Subtitle, DateTimeOffset Made, string Fingerprint, ValueList<Section> Sections, ValueList<SeenEntry> Entries)
{
    /// <summary>BCP 47.</summary>
    public const string Language = "en";
}

/// <summary>One chapter; the first is the summary.</summary>
public sealed record Section(string Title, ValueList<Block> Blocks);

/// <summary>Something laid out below what came before.</summary>
public abstract record Block;

/// <summary>How far something said is shown by the log.</summary>
public enum Backing
{
    /// <summary>Says nothing about the car.</summary>
    Explains,

    /// <summary>The entries that it names say so.</summary>
    Recorded,

    /// <summary>The owner believes it; nothing shows it.</summary>
    Believed,

    /// <summary>A warning to the buyer: never softened, needs no proof.</summary>
    Warns,
}

/// <summary>A sentence or two.</summary>
/// <param name="Entries">Numbers of the entries that it rests on.</param>
public sealed record Said(string Text, Backing Backing, ValueList<int> Entries) : Block;

/// <summary>A table; each row names its own entries.</summary>
public sealed record Table(ValueList<string> Columns, ValueList<Row> Rows) : Block;

public sealed record Row(ValueList<string> Cells, ValueList<int> Entries);

/// <summary>Pictures beside each other.</summary>
public sealed record Pictures(ValueList<Picture> Shown) : Block;

/// <summary>One picture.</summary>
/// <param name="Name">The name its bytes are kept under.</param>
/// <param name="Width">Pixels, upright.</param>
/// <param name="Entry">Number of the entry that tells of it.</param>
public sealed record Picture(string Name, int Width, int Height, string Caption, int Entry);
