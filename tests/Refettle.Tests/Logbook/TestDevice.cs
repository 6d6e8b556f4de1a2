using System.Security.Cryptography;
using System.Text;
using Refettle.Logbook;

namespace Refettle.Tests.Logbook;

/// <summary>A device in a test: writes entries about one car, and learns of those of others when told to.</summary>
internal sealed class TestDevice(string name, int seed = 0, TimeSpan clockOff = default)
{
    public const string Car = "heron";

    private static readonly DateTimeOffset Start = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    private readonly LogWriter _writer = new(name, new FixedClock(Start + clockOff), new SeededBytes($"{name}/{seed}"));

    /// <summary>All that it knows, in order of arrival.</summary>
    public List<Entry> Known { get; } = [];

    public Entry Write(Happening happening)
    {
        var entry = _writer.Next(Car, LogEnd.Of(name, Known), happening);
        Known.Add(entry);
        return entry;
    }

    public void Learn(IEnumerable<Entry> entries)
    {
        var here = Known.Select(entry => entry.Id).ToHashSet();
        Known.AddRange(entries.Where(entry => here.Add(entry.Id)));
    }

    public CarHistory History() => CarHistory.Of(Car, Known);
}

/// <summary>A clock that stands still.</summary>
internal sealed class FixedClock(DateTimeOffset now) : TimeProvider
{
    public override DateTimeOffset GetUtcNow() => now;
}

/// <summary>Random bytes that a seed repeats.</summary>
internal sealed class SeededBytes(string seed) : RandomNumberGenerator
{
    private readonly Random _random = new(BitConverter.ToInt32(SHA256.HashData(Encoding.UTF8.GetBytes(seed))));

    public override void GetBytes(byte[] data) => _random.NextBytes(data);
}
