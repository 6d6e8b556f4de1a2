using Refettle.Bags;
using Refettle.Paper.Labels;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;

namespace Refettle.Paper.Tests.Labels;

/// <summary>QR codes are decoded with ZXing.Net, from the rectangles that PdfPig reads in the file, and
/// from pdftoppm's picture of it.</summary>
public sealed class LabelPaperTests
{
    /// <summary>Dots to the point: as a phone tries from nearer and farther when it does not read a code at once.</summary>
    private static readonly int[] Distances = [3, 4, 2, 5];

    private static readonly BagLabel[] Labels =
        [.. Enumerable.Range(1, 25).Select(i => new BagLabel($"{i}", $"http://192.168.1.20:5188/car/heron-22/bag/{i}",
        [$"Rear left shackle bolt {i}, M12×1.25", "60 N·m (not the maker's figure); snug now, torque at ride height",
            "four washers, thick ones outside"]))];

    public static TheoryData<string> Sheets => new(LabelSheet.All.Select(sheet => sheet.Id));

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Every_label_is_read_back_on_every_size(string id)
    {
        var sheet = LabelSheet.Of(id)!;
        using var pdf = PdfDocument.Open(Written(Labels, sheet, 1));
        Assert.Equal((Labels.Length + 1 + sheet.OnePaper - 1) / sheet.OnePaper, pdf.NumberOfPages);
        var i = -1;
        foreach (var page in pdf.GetPages())
        {
            var dark = page.Paths.Where(path => path.IsFilled).Select(path => path.GetBoundingRectangle()).OfType<PdfRectangle>().ToList();
            for (var place = 0; place < sheet.OnePaper && i < Labels.Length; place++, i++)
            {
                if (i >= 0)
                    Assert.True(Distances.Select(dots => Decode(Cut(dark, page.Height, sheet, place, dots))).OfType<string>()
                        .FirstOrDefault() == Labels[i].Scan, $"label {i + 1}");
            }
        }

        Assert.Equal(Labels.Length, i);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Labels_lie_on_the_paper_and_not_on_each_other(string id)
    {
        var sheet = LabelSheet.Of(id)!;
        Assert.InRange(sheet.Left, 0, 30);
        Assert.InRange(sheet.Left + ((sheet.Columns - 1) * sheet.Across) + sheet.Width, 0, sheet.PaperWidth + 0.001);
        Assert.InRange(sheet.Top + ((sheet.Rows - 1) * sheet.Down) + sheet.Height, 0, sheet.PaperHeight + 0.001);
        Assert.True(sheet.Across >= sheet.Width && sheet.Down >= sheet.Height);
        using var pdf = PdfDocument.Open(Written(Labels, sheet, 0));
        Assert.All(pdf.GetPages().SelectMany(page => page.Letters.Select(letter => (page, letter))), one =>
        {
            var at = (one.letter.BoundingBox.Left * 25.4 / 72 - sheet.Left) % sheet.Across;
            Assert.InRange(at, 0, sheet.Width);
            Assert.InRange(at + one.letter.BoundingBox.Width * 25.4 / 72, 0, sheet.Width);
        });
        Assert.Contains("N·m", pdf.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Sheets))]
    public void The_longest_code_is_printed_too(string id)
    {
        using var pdf = PdfDocument.Open(Written([new("WWWW-WWM", "WWWW-WWM", ["four washers"])], LabelSheet.Of(id)!, 0));
        Assert.Contains("WWWW-WWM", pdf.GetPage(1).Text, StringComparison.Ordinal);
    }

    [ToolFact("pdftoppm")]
    public void A_printed_sheet_is_read_as_a_camera_would()
    {
        var file = Path.GetTempFileName();
        File.WriteAllBytes(file, Written(Labels[..1], LabelSheet.Of("50x30")!, 0));
        Tool.Run("pdftoppm", "-r", "200", "-gray", "-singlefile", file, file);
        Assert.Equal(Labels[0].Scan, Decode(Gray(File.ReadAllBytes(file + ".pgm"))));
        File.Delete(file);
        File.Delete(file + ".pgm");
    }

    [Fact]
    public void A_label_says_part_side_step_and_torque()
    {
        var car = new Car
        {
            Id = "heron",
            Name = "Heron",
            Structure = new()
            {
                Parts = [new() { Id = "arm", Name = "Lower arm", Side = Side.Left }, new() { Id = "body", Name = "Body" }],
                Joints = [new()
                    { Id = "arm-bolt", Name = "Lower arm pivot bolt", Holds = ["arm", "body"], Count = 2, Thread = "M12x1.25",
                        Torque = new(80), AtRideHeight = true, SingleUse = true, Origin = Origin.Maker, Ways = [] }],
            },
        };
        var label = BagLabel.Of(car,
            new() { Code = "a-7", For = ["part arm", "joint arm-bolt"], Holds = ["old", "two cam washers"], Place = "shelf 2" }, null);
        Assert.Equal(("A-7", "A-7"), (label.Code, label.Scan));
        Assert.Equal(["two cam washers", "old", "Lower arm, left", "2 × Lower arm pivot bolt, M12x1.25",
            "80 N·m; snug now, torque at ride height; new ones each time", "In: shelf 2"], label.Lines);
        Assert.Equal("http://garage/car/heron/bag/a-7", BagLabel.Of(car, new() { Code = "a-7" }, "http://garage/").Scan);
    }

    private static byte[] Written(IReadOnlyList<BagLabel> labels, LabelSheet sheet, int skip)
    {
        using var file = new MemoryStream();
        LabelPaper.Write(file, labels, sheet, skip);
        return file.ToArray();
    }

    /// <summary>The dark rectangles of one label, as dots.</summary>
    private static RGBLuminanceSource Cut(List<PdfRectangle> dark, double paper, LabelSheet sheet, int place, int dots)
    {
        var points = 72 / 25.4;
        var (left, top) = ((sheet.Left + (place % sheet.Columns * sheet.Across)) * points,
            paper - ((sheet.Top + (place / sheet.Columns * sheet.Down)) * points));
        var (width, height) = ((int)(sheet.Width * points * dots), (int)(sheet.Height * points * dots));
        var gray = Enumerable.Repeat((byte)255, width * height).ToArray();
        foreach (var box in dark)
        {
            for (var y = (int)Math.Round((top - box.Top) * dots); y < Math.Round((top - box.Bottom) * dots); y++)
            {
                for (var x = (int)Math.Round((box.Left - left) * dots); x < Math.Round((box.Right - left) * dots); x++)
                {
                    if (x >= 0 && x < width && y >= 0 && y < height)
                        gray[(y * width) + x] = 0;
                }
            }
        }

        return new(gray, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
    }

    /// <summary>Binary portable graymap: <c>P5 width height 255</c>, then a byte for each dot.</summary>
    private static RGBLuminanceSource Gray(byte[] file)
    {
        var head = System.Text.Encoding.ASCII.GetString(file, 0, 40).Split([' ', '\n'], 5);
        var (width, height) = (int.Parse(head[1]), int.Parse(head[2]));
        return new(file[^(width * height)..], width, height, RGBLuminanceSource.BitmapFormat.Gray8);
    }

    /// <summary>By either way of telling dark from light, as a phone tries one picture after another.</summary>
    private static string? Decode(LuminanceSource source) =>
        Decode(new HybridBinarizer(source)) ?? Decode(new GlobalHistogramBinarizer(source));

    private static string? Decode(Binarizer dark) => new QRCodeReader().decode(new BinaryBitmap(dark))?.Text;
}
