using Refettle.SaleFile;

namespace Refettle.Tests.SaleFile;

/// <summary>The first rows are from trade practice on selling (law columns): "rust-free" against "to the best of my knowledge, no
/// significant rust", "undercarriage immaculate".</summary>
public sealed class WordingGuardTests
{
    [Theory]
    [InlineData("The body is rust-free.", "rust-free")]
    [InlineData("Undercarriage immaculate", "immaculate")]
    [InlineData("Never welded", "Never")]
    [InlineData("Fully restored in 2026", "Fully restored")]
    [InlineData("absolutely no rust anywhere", "no rust anywhere")]
    [InlineData("Accident free, matching numbers", "Accident free|matching numbers")]
    [InlineData("As good as new; needs nothing", "As good as new|needs nothing")]
    [InlineData("every bolt torqued, all joints greased", "every bolt|all joints")]
    [InlineData("A nut-and-bolt restoration, road legal", "nut-and-bolt restoration|road legal")]
    [InlineData("I believe in honesty. It is perfect.", "perfect")]
    [InlineData("New bushes", "New")]
    public void Words_that_promise_too_much_are_found(string text, string words)
    {
        var found = WordingGuard.Of(text, isShown: false);
        Assert.Equal(words, string.Join('|', found.Select(claim => claim.Words)));
        Assert.All(found, claim => Assert.NotEmpty(claim.Offer));
    }

    [Theory]
    [InlineData("To the best of my knowledge, no significant rust")]
    [InlineData("Rear springs taken off, leaves cleaned and painted")]
    [InlineData("I know of no accident; I cannot speak for the time before me")]
    [InlineData("No rust was recorded in the sills")]
    [InlineData("The newel post and the renewal form")]
    [InlineData("Air bag made-safe before the dash came out")]
    public void Words_that_can_be_stood_by_are_left_alone(string text) => Assert.Empty(WordingGuard.Of(text, isShown: false));

    [Fact]
    public void What_entries_can_show_is_allowed_once_they_are_named()
    {
        Assert.NotEmpty(WordingGuard.Of("Rear bushes renewed", isShown: false));
        Assert.Empty(WordingGuard.Of("Rear bushes renewed", isShown: true));
        Assert.NotEmpty(WordingGuard.Of("Rust-free", isShown: true));
    }

    [Fact]
    public void What_is_offered_does_not_promise_too_much_itself() =>
        Assert.All(new[] { "rust-free", "accident-free", "needs nothing",
            "genuine mileage" }.SelectMany(text => WordingGuard.Of(text, false)),
            claim => Assert.Empty(WordingGuard.Of(claim.Offer, isShown: true)));
}
