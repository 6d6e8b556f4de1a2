namespace Refettle.Logbook;

/// <summary>A device that writes entries, and what its owner calls it.</summary>
/// <param name="Device">Its name in entries.</param>
public sealed record NamedDevice(string Device, string Name);

/// <summary>What devices are called by their owner. Entries keep the name under which they were written.</summary>
public sealed record DeviceNames(ValueList<NamedDevice> Known)
{
    private const int MarkLength = 8;

    public static DeviceNames None { get; } = new([]);

    /// <summary>What to call it; two of one name are told apart by the ends of their names in entries.</summary>
    public string Of(string device) => Known.FirstOrDefault(one => one.Device == device) is not { } named ? device
        : Known.Count(one => one.Name == named.Name) == 1 ? named.Name
        : $"{named.Name} ({device[^Math.Min(MarkLength, device.Length)..]})";
}
