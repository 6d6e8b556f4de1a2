using Refettle.QuickLine;
using Refettle.Server.Tests;
using Refettle.Web.Words;

namespace Refettle.Web.Tests.Words;

public sealed class ReadingWordsTests
{
    private static readonly CarLookup _car = new(new() { Id = "x", Name = "x", Structure = SmallCar.Structure });

    [Theory]
    [InlineData("rear left damper leaks, need 2", "Condition: Rear left damper, drips, 2 new into the basket")]
    [InlineData("rear axle rusty", "Condition: Rear axle, no word of its scale: kept as a note")]
    [InlineData("rear axle off 25 min", "Off or open: Rear axle, 25 min")]
    [InlineData("bag 14 four washers thick ones outside", "Put into: Bag 14, four washers thick ones outside")]
    [InlineData("bags 12 and 13 on shelf 2", "Moved: Bag 12, Bag 13, shelf 2")]
    [InlineData("height rl 382", "Ride height: rear left, 382 mm")]
    [InlineData("buy milk", "Note: the whole car")]
    [InlineData("bolt left leaf spring body moved after 2 soaks", "Tried: Bolt: Rear left leaf spring – Body shell, soak, soaked: free")]
    public void A_line_is_told_back_as_it_was_understood(string line, string told) =>
        Assert.Equal(told, ReadingWords.Of(new LineReader(SmallCar.Structure).Read(line).Best, _car));
}
