namespace Refettle.Storage.Pairing;

/// <summary>A device that may use this garage over the network until its token is revoked.</summary>
public sealed record PairedDevice(string Id, string Name, DateTimeOffset Since);

/// <summary>What a device that was just paired takes away.</summary>
/// <param name="Token">Its secret; it is told this once.</param>
public sealed record NewDevice(PairedDevice Device, string Token);
