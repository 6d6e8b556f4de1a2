using System.Text;
using Refettle.Logbook;
using Refettle.SaleFile.Sealing;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.SaleFile;

/// <summary>A sealed record of 1,000 entries by three devices, every seventh with a field blacked out.</summary>
internal static class ThousandEntries
{
    public const int Count = 1_000;

    public static TestSeal Key { get; } = new();

    public static Entry[] Entries { get; } = Written();

    public static byte[] File { get; } = Sealed(Entries);

    public static byte[] Sealed(Entry[] entries)
    {
        var text = new StringWriter();
        var given = entries.Select((entry, i) => GivenEntry.Of(entry, (name, _) => i % 7 == 0 && name is "text" or "by" or "took"))
            .ToList();
        SealedRecord.Write(text, TestDevice.Car, DateTimeOffset.UnixEpoch, given, ["names"], Key);
        return Closed(text.ToString());
    }

    public static byte[] Closed(string text)
    {
        using var file = new MemoryStream();
        file.Write(Encoding.UTF8.GetBytes(text));
        FileSeal.Close(file, Key);
        return file.ToArray();
    }

    private static Entry[] Written()
    {
        var devices = new[] { "laptop", "phone", "tablet" }.Select(name => new TestDevice(name)).ToArray();
        for (var i = 0; i < Count; i++)
        {
            var device = devices[i / 40 % devices.Length];
            if (i % 40 == 0)
                device.Learn(devices[(i / 40 + 2) % devices.Length].Known);
            device.Write(Happening(i));
        }

        return [.. devices.SelectMany(device => device.Known).DistinctBy(entry => entry.Id)];
    }

    private static Happening Happening(int i) => (i % 4) switch
    {
        0 => new Noted($"note {i}: “washer” <b> & ½ 🔩", i % 8 == 0 ? null : "part tank"),
        1 => new StepDone(Fact.Open($"joint-{i}"), "spanner", new(i % 90)),
        2 => new JointTightened($"joint-{i}", Tightness.Torqued, new(45.5m), "wrench 20–100", "me"),
        _ => new StepReversed(Fact.Off($"part-{i}"), null),
    };
}
