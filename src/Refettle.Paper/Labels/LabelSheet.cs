namespace Refettle.Paper.Labels;

/// <summary>A size of labels. Lengths in millimetres.</summary>
/// <param name="Id">What it is asked for by.</param>
/// <param name="Left">From the paper's edge to the first label.</param>
/// <param name="Across">From one label's left edge to the next one's.</param>
/// <param name="Down">From one label's top edge to the next one's.</param>
public sealed record LabelSheet(
    string Id, double PaperWidth, double PaperHeight, int Columns, int Rows, double Width, double Height, double Left, double Top,
    double Across, double Down)
{
    /// <summary>A4 sheets by columns and rows, then single labels of a label printer by width and height.</summary>
    public static ValueList<LabelSheet> All { get; } =
    [
        Sheet("a4-2x4", 2, 4, 105, 74), Sheet("a4-2x7", 2, 7, 99.1, 38.1), Sheet("a4-3x7", 3, 7, 63.5, 38.1), Sheet("a4-3x8", 3, 8, 70, 37),
        Sheet("a4-4x10", 4, 10, 48.5, 25.4),
        Roll(62, 29), Roll(57, 32), Roll(50, 30), Roll(89, 36), Roll(100, 50),
    ];

    public int OnePaper => Columns * Rows;

    public static LabelSheet? Of(string id) => All.FirstOrDefault(sheet => sheet.Id == id);

    /// <summary>A grid in the middle of an A4 sheet: labels side by side with 2.5 mm between columns where the paper leaves room.</summary>
    private static LabelSheet Sheet(string id, int columns, int rows, double width, double height)
    {
        const double paperWidth = 210, paperHeight = 297;
        var gap = (columns * width) + ((columns - 1) * 2.5) <= paperWidth ? 2.5 : 0;
        var across = width + gap;
        return new(id, paperWidth, paperHeight, columns, rows, width, height, (paperWidth - ((columns - 1) * across) - width) / 2,
            (paperHeight - (rows * height)) / 2, across, height);
    }

    private static LabelSheet Roll(double width, double height) =>
        new(FormattableString.Invariant($"{width}x{height}"), width, height, 1, 1, width, height, 0, 0, width, height);
}
