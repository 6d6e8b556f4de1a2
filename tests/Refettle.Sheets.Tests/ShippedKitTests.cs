using Refettle.Checks;
using Refettle.Kits;

namespace Refettle.Sheets.Tests;

/// <summary>Guards the content of <c>kits/</c> and <c>samples/</c>.</summary>
public sealed class ShippedKitTests
{
    [Fact]
    public void Every_kit_is_read_and_added_on_each_side_without_faults() =>
        None(KitShelf.Load(Checkout.Kits) is { IsGood: true } shelf
            ? [.. shelf.Faults, .. shelf.Value.Faults]
            : KitShelf.Load(Checkout.Kits).Faults);

    private static void None(IEnumerable<Fault> faults)
    {
        var words = string.Join('\n', faults);
        Assert.True(words.Length == 0, words);
    }

    [Fact]
    public void Every_sample_sheet_is_read_without_faults()
    {
        var files = Directory.Exists(Checkout.Samples) ? Directory.GetFiles(Checkout.Samples, "*.yaml") : [];
        None(files.SelectMany(file => SheetReader.Read(File.ReadAllBytes(file), file).Faults));
    }

    /// <summary>A page asks for all of them in a row.</summary>
    [Fact]
    public void No_kit_asks_for_two_connections_in_the_same_words() =>
        Assert.Empty(Checkout.Shelf.Kits.SelectMany(kit => kit.Holes.GroupBy(hole => hole.Means).Where(same => same.Count() > 1)
            .Select(same => $"{kit.Id}: {same.Key}")));

    /// <summary>Kits that are alternatives (two kinds of front suspension) have identifiers in common: the second one is refused, so both
    /// orders are tried.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void All_kits_go_onto_one_car_on_all_their_sides_unless_their_place_is_taken(bool backwards)
    {
        var car = Checkout.Shelf.Start;
        foreach (var kit in backwards ? Checkout.Shelf.Kits.Reverse() : Checkout.Shelf.Kits)
        {
            foreach (var spot in kit.Spots.Count == 0 ? [Spot.None] : kit.Spots)
            {
                var addition = KitAddition.Propose(car, kit, spot);
                var others = addition.Faults
                    .Where(fault => fault.Severity == Severity.Error && !fault.Found.StartsWith("the car has ", StringComparison.Ordinal))
                    .ToArray();
                Assert.True(others.Length == 0, $"{kit.Id} {spot.Code()}: {string.Join('\n', others.AsEnumerable())}");
                car = addition.IsGood ? car.With(addition.Value.Entry.Added, addition.Value.Entry.Tied) : car;
            }
        }

        Assert.Empty(StructureCheck.Of(car));
    }
}
