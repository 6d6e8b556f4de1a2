using Refettle.Web.Words;

namespace Refettle.Web.Tests.Words;

public sealed class KeptWordsTests
{
    [Theory]
    [InlineData(true, true, 3, 1, "Opening …")]
    [InlineData(false, true, 0, 0, "All in the logbook")]
    [InlineData(false, false, 0, 0, "No connection")]
    [InlineData(false, false, 2, 0, "2 kept on this device")]
    [InlineData(false, true, 0, 1, "1 photo kept on this device")]
    [InlineData(false, false, 2, 3, "2 and 3 photos kept on this device")]
    public void It_says_where_things_are(bool opening, bool reached, int entries, int photos, string says) =>
        Assert.Equal(says, KeptWords.Of(opening, reached, entries, photos));
}
