using Refettle.Kits;

namespace Refettle.Sheets.Tests;

/// <summary>Guards the content of <c>kits/</c> and <c>samples/</c>.</summary>
public sealed class ShippedKitTests
{
    [Fact]
    public void Every_kit_is_read_and_added_on_each_side_without_faults() =>
        None(KitShelf.Load(Checkout.Kits).Faults);

    private static void None(IEnumerable<Fault> faults)
    {
        var words = string.Join('\n', faults.Where(fault => fault.Severity == Severity.Error));
        Assert.True(words.Length == 0, words);
    }

    [Fact]
    public void Every_sample_sheet_is_read_without_faults()
    {
        var files = Directory.Exists(Checkout.Samples) ? Directory.GetFiles(Checkout.Samples, "*.yaml") : [];
        None(files.SelectMany(file => SheetReader.Read(File.ReadAllBytes(file), file).Faults));
    }

    [Fact]
    public void All_kits_go_onto_one_car_on_all_their_sides()
    {
        var car = Checkout.Shelf.Start;
        foreach (var kit in Checkout.Shelf.Kits)
        {
            foreach (var spot in kit.Spots.Count == 0 ? [Spot.None] : kit.Spots)
            {
                var addition = KitAddition.Propose(car, kit, spot);
                Assert.True(addition.IsGood, $"{kit.Id} {spot}: {string.Join('\n', addition.Faults)}");
                car = car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied);
            }
        }
    }
}
