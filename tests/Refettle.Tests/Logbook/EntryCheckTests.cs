using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

public sealed class EntryCheckTests
{
    private static readonly Entry Good = new TestDevice("bench").Write(new Noted("½ 🔧", null));

    [Fact]
    public void What_the_writer_makes_has_the_form_of_an_entry() => Assert.Empty(EntryCheck.Of(Good));

    /// <summary>RFC 9562 §5.7: 48 bits of Unix milliseconds, big-endian, then version 7 and variant 10.</summary>
    [Fact]
    public void Its_identifier_is_a_uuid_of_version_7_with_its_time()
    {
        Assert.Equal(7, Good.Id.Version);
        Assert.InRange(Good.Id.Variant, 8, 11);
        Assert.Equal(Good.At.ToUnixTimeMilliseconds(), Convert.ToInt64(Good.Id.ToString("N")[..12], 16));
    }

    public static TheoryData<Entry> Wrong => new(
        Good with { Id = Guid.Empty },
        Good with { Car = "My Car" },
        Good with { Device = "" },
        Good with { Kind = "<b>" },
        Good with { Sequence = 0, Previous = Good.Salt },
        Good with { Sequence = 2 },
        Good with { Version = 0 },
        Good with { Salt = Good.Salt.ToUpperInvariant() + "F" },
        Good with { Previous = Good.Salt },
        Good with { At = Good.At.AddTicks(1) },
        Good with { Payload = "{" },
        Good with { Payload = "\"\uD800\"" },
        Good with { Payload = new string('[', 100_000) },
        Good with { After = Enumerable.Repeat(Good.Id, EntryCheck.MaxAfter + 1).ToValueList() });

    [Theory]
    [MemberData(nameof(Wrong))]
    public void What_has_not_is_refused(Entry entry) => Assert.Single(EntryCheck.Of(entry));
}
