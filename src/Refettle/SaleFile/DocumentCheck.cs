using Refettle.SaleFile.Chapters;

namespace Refettle.SaleFile;

/// <summary>Whether a sale file may be given away: looks at the finished document alone, not at how it was made.</summary>
public static class DocumentCheck
{
    public static ValueList<string> Of(SaleDocument document) =>
        [.. Short(document.Sections[0]),
            .. document.Sections.SelectMany(section => section.Blocks.SelectMany(block => Rests(section, block, document.Entries.Count)))];

    /// <summary>Words of a section as a reader counts them: between blanks.</summary>
    public static int Words(Section section) =>
        section.Blocks.OfType<Said>().Sum(said => said.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length)
        + section.Blocks.OfType<Pictures>().SelectMany(pictures => pictures.Shown)
            .Sum(picture => picture.Caption.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length);

    private static IEnumerable<string> Short(Section summary)
    {
        if (Words(summary) > Summary.MostWords)
            yield return $"the summary has {Words(summary)} words";
        if (summary.Blocks.OfType<Pictures>().Sum(pictures => pictures.Shown.Count) > Summary.MostPictures)
            yield return "the summary has too many pictures";
        if (summary.Blocks.OfType<Table>().Any())
            yield return "the summary has a table";
    }

    private static IEnumerable<string> Rests(Section section, Block block, int entries)
    {
        var numbers = block switch
        {
            Said said => said.Entries,
            Table table => table.Rows.SelectMany(row => row.Entries).ToValueList(),
            Pictures pictures => pictures.Shown.Select(picture => picture.Entry).ToValueList(),
            _ => [],
        };
        if (numbers.Any(number => number < 1 || number > entries))
            yield return $"{section.Title}: it names an entry that is not there";
        if (block is Said { Backing: Backing.Recorded, Entries.Count: 0 } bare)
            yield return $"{section.Title}: nothing shows “{bare.Text}”";
        if (block is Table uneven && uneven.Rows.Any(row => row.Cells.Count != uneven.Columns.Count))
            yield return $"{section.Title}: a row does not fill its table";
    }
}
