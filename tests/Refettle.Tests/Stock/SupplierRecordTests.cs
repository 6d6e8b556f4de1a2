using Refettle.Logbook;
using Refettle.Stock;

namespace Refettle.Tests.Stock;

/// <summary>Factors worked out by an independent script from the stated prior and update, with quantiles of
/// Student's t by numeric integration of its density; they agree with the printed tables of t (8 degrees: 0.889 and
/// 1.860; 11 degrees: 0.876 and 1.796).</summary>
public sealed class SupplierRecordTests
{
    [Theory]
    [InlineData(0.5, 1.1)]
    [InlineData(0.8, 1.54453311679306)]
    [InlineData(0.95, 2.237492131551507)]
    public void Before_any_order_it_is_wide_and_says_so(double probability, double factor)
    {
        var record = SupplierRecord.Of(Shelf.Empty, "Harbour Rubber", Garage.Day(0));
        Assert.Equal(factor, record.Factor(probability), 6);
        Assert.Equal(Origin.CommonPractice, record.Origin);
        Assert.Contains("no source", record.Says, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0.5, 1.2671552489198792)]
    [InlineData(0.8, 1.7229720504912003)]
    [InlineData(0.95, 2.379900773511545)]
    public void Every_order_that_came_teaches(double probability, double factor)
    {
        var garage = new Garage("bench").Opened();
        foreach (var (promised, took) in new[] { (7, 9), (10, 21), (5, 5) })
        {
            var order = garage.Write(Garage.Estate,
                new Ordered("Harbour Rubber", [new("SEAL", 1)], Garage.Day(0), Garage.Day(promised), null, null));
            garage.Write(Garage.Estate, new Arrived(order, [new("SEAL", new("SEAL"), 1)], Garage.Day(took)));
        }

        var record = SupplierRecord.Of(garage.Shelf(), "Harbour Rubber", Garage.Day(40));
        Assert.Equal((3, Origin.Measured), (record.Seen, record.Origin));
        Assert.Equal(factor, record.Factor(probability), 6);
        Assert.Equal(1.1, SupplierRecord.Of(garage.Shelf(), "Another", Garage.Day(40)).Factor(0.5), 6);
    }

    [Fact]
    public void An_overdue_order_counts_as_if_it_came_today()
    {
        var garage = new Garage("bench").Opened();
        garage.Write(Garage.Estate, new Ordered("Slow", [new("SEAL", 1)], Garage.Day(0), Garage.Day(7), null, null));
        Assert.Equal(0, SupplierRecord.Of(garage.Shelf(), "Slow", Garage.Day(7)).Seen);
        Assert.Equal(1, SupplierRecord.Of(garage.Shelf(), "Slow", Garage.Day(30)).Seen);
        Assert.True(SupplierRecord.Of(garage.Shelf(), "Slow", Garage.Day(60))
            .Factor(0.5) > SupplierRecord.Of(garage.Shelf(), "Slow", Garage.Day(30)).Factor(0.5));
    }
}
