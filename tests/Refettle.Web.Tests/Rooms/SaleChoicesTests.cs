using Refettle.Logbook;
using Refettle.Web.Rooms;

namespace Refettle.Web.Tests.Rooms;

public sealed class SaleChoicesTests
{
    [Fact]
    public void Prices_and_names_are_left_out_until_chosen()
    {
        var choices = new SaleChoices();
        Assert.Equal("api/cars/heron/sale-file.pdf?prices=false&names=false&hours=true", choices.Address("heron", "pdf"));
        choices.Prices = true;
        Assert.Contains("prices=true&names=false", choices.Address("heron", "html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_promise_too_much_are_shown_while_they_are_typed()
    {
        var choices = new SaleChoices { Text = "rust-free", Topic = DeclarationTopic.Claim };
        Assert.Equal("rust-free", Assert.Single(choices.Overclaims).Words);
        Assert.Equal(new Declared(DeclarationTopic.Claim, "rust-free", null, []), choices.Declared);
        Assert.Null(new SaleChoices { Text = "  " }.Declared);
    }
}
