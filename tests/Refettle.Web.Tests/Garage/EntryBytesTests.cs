using System.Text;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

/// <summary>The form is of our own making (js/kept.js writes it), so there is no outside source for it.</summary>
public sealed class EntryBytesTests
{
    private const string Head =
        """{"entry":{"id":"0197f6f0-0000-7000-8000-000000000001","car":"c","device":"d","sequence":1,"salt":"","previous":"","at":"2027-01-09T18:30:00+00:00","kind":"noted","version":1,"payload":""},"sent":true,"bytes":4}""";

    [Fact]
    public void Payloads_are_given_back_letter_for_letter()
    {
        var second = Head.Replace("true,\"bytes\":4", "false,\"bytes\":3", StringComparison.Ordinal);
        var read = EntryBytes.Read(Encoding.UTF8.GetBytes($"[{Head},{second}]\0{{é}}\0\"x"));
        Assert.Equal(["{é}", "\0\"x"], read.Select(kept => kept.Entry.Payload));
        Assert.Equal([true, false], read.Select(kept => kept.Sent));
        Assert.Equal("noted", read[0].Entry.Kind);
    }

    [Fact]
    public void None_kept_are_none_read() => Assert.Empty(EntryBytes.Read("[]\0"u8));
}
