using CsCheck;
using Refettle.Kits;

namespace Refettle.Sheets.Tests;

public sealed class SheetWriterTests
{
    [Fact]
    public void What_is_written_is_read_back_the_same() => AnySheet.Gen1.Sample(sheet =>
    {
        var text = SheetWriter.Write(sheet);
        var again = SheetReader.Read(text, "x.yaml");
        Assert.False(IsMisread(again), text + string.Join('\n', again.Faults));
        var read = SheetWriter.Write(again.IsGood ? again.Value : sheet);
        Assert.Equal(text, read);
        if (again.IsGood)
            Assert.Equal(sheet, again.Value);
    }, iter: 300);

    /// <summary>YAML 1.2.2, 5.7: an escape is one character. Two that make one together are JSON's,
    /// and other readers refuse them.</summary>
    [Fact]
    public void A_letter_beyond_the_first_plane_is_written_as_it_is()
    {
        var sheet = new CarSheet { Name = "Räder 🛞 \"x\"", Structure = Structure.Empty };
        Assert.Contains("name: \"Räder 🛞 \\\"x\\\"\"", SheetWriter.Write(sheet), StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_of_kits_with_loose_ends_survives_and_can_still_be_tied()
    {
        var shelf = Checkout.Shelf;
        var car = shelf.Start;
        foreach (var kit in shelf.Kits.Where((_, i) => i % 3 == 0))
        {
            var addition = KitAddition.Propose(car, kit, kit.Spots.Count == 0 ? Spot.None : kit.Spots[0]);
            car = addition.IsGood ? car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied) : car;
        }

        var sheet = new CarSheet { Name = "Car", Structure = car };
        Assert.NotEmpty(car.LooseEnds);
        Assert.Equal(sheet, SheetReader.Read(SheetWriter.Write(sheet), "x").Value);
    }

    /// <summary>Faults of form; the random structures may well wait in circles, which is not what is tested here.</summary>
    private static bool IsMisread(Result<CarSheet> result) =>
        result.Faults
            .Any(fault => fault.Severity == Severity.Error && !fault.Found.StartsWith("circular support", StringComparison.Ordinal));
}
