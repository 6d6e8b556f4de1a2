using Refettle.Paper.Pdf;

namespace Refettle.Paper.Tests.Pdf;

public sealed class PdfTableTests
{
    [Fact]
    public void A_head_that_is_wider_than_its_column_is_printed_whole()
    {
        using var file = new MemoryStream();
        using (var document = new PdfSharp.Pdf.PdfDocument())
        {
            using var pages = new Pages(document);
            pages.Begin();
            string[][] rows = [["1", new('w', 60), new('w', 60), new('w', 60), new('w', 60)]];
            var table = new PdfTable(pages, ["Ride height, hub centre to wheel arch", "a", "b", "c", "d"], rows);
            table.Begin();
            table.Row(rows[0]);
            table.End();
            document.Save(file, closeStream: false);
        }

        using var pdf = UglyToad.PdfPig.PdfDocument.Open(file.ToArray());
        var letters = pdf.GetPage(1).Letters;
        var column = string.Concat(letters.Where(letter => letter.BoundingBox.Left < letters.Where(
            one => one.Value == "a" && one.FontSize > 8).Max(one => one.BoundingBox.Left)).Select(letter => letter.Value));
        Assert.Equal("Rideheight,hubcentretowheelarch1", column.Replace(" ", "", StringComparison.Ordinal)[..32]);
    }
}
