using Refettle.Logbook;

namespace Refettle.Server.Tests.Network;

/// <summary>An evening with three devices and a bad network, from a seed; then the network heals and everybody syncs.</summary>
internal static class NetworkHistory
{
    private const int Devices = 3;
    private const int MostSteps = 30;

    /// <returns>What went wrong: lost, doubled, not the same everywhere, broken chains; empty when nothing did.</returns>
    public static async Task<IReadOnlyList<string>> RunAsync(int seed, TestGarage garage, Dictionary<Fate, int> fates)
    {
        var random = new Random(seed);
        var car = $"car-{seed}";
        var faults = random.Next(10, 70);
        var phones = Enumerable.Range(1, Devices).Select(number => new Phone(car, number, garage.Address, new(random, faults), random))
            .ToList();
        for (var step = random.Next(5, MostSteps); step > 0; step--)
            await StepAsync(phones[random.Next(Devices)], random);
        await HealAsync(phones);
        var wrong = Wrong([.. garage.Logbook.Read(car).Select(kept => kept.Entry)], car, phones);
        foreach (var (fate, count) in phones.SelectMany(phone => phone.Network.Fates))
            fates[fate] = fates.GetValueOrDefault(fate) + count;
        phones.ForEach(phone => phone.Dispose());
        return [.. wrong.Select(what => $"seed {seed}: {what}")];
    }

    private static async Task StepAsync(Phone phone, Random random)
    {
        switch (random.Next(6))
        {
            case 0 or 1:
                await phone.WriteAsync(Something(phone, random));
                break;
            case 2 or 3:
                await phone.Log.SyncAsync();
                break;
            case 4:
                await phone.Network.DeliverLateAsync(all: false);
                break;
            default:
                await phone.ReopenAsync();
                break;
        }
    }

    private static Happening Something(Phone phone, Random random) => random.Next(4) switch
    {
        0 => new CarOpened("Heron", 1988, "EUR"),
        1 when phone.Log.Entries.Count > 0 => new Struck(phone.Log.Entries[random.Next(phone.Log.Entries.Count)].Id, null),
        2 => new HeightMeasured("rl", new(380 + random.Next(10))),
        _ => new Noted($"note {random.Next()}", null),
    };

    private static async Task HealAsync(List<Phone> phones)
    {
        foreach (var phone in phones)
            phone.Network.IsHealed = true;
        foreach (var phone in phones)
            await phone.Network.DeliverLateAsync(all: true);
        foreach (var phone in phones.Concat(phones))
            await phone.Log.SyncAsync();
    }

    private static IEnumerable<string> Wrong(List<Entry> kept, string car, List<Phone> phones)
    {
        var acknowledged = phones.SelectMany(phone => phone.Acknowledged).ToList();
        if (acknowledged.Except(kept.Select(entry => entry.Id)).Count() is > 0 and var lost)
            yield return $"{lost} of {acknowledged.Count} acknowledged entries are lost";
        if (kept.Count != acknowledged.Count)
            yield return $"{acknowledged.Count} entries were written, {kept.Count} are kept";
        foreach (var broken in ChainCheck.Of(kept))
            yield return broken.ToFault().ToString();
        var history = CarHistory.Of(car, kept);
        foreach (var phone in phones)
        {
            if (phone.Log.Waiting > 0)
                yield return $"{phone.Log.Waiting} entries still wait on a device";
            if (phone.Log.Entries.Count != kept.Count || CarHistory.Of(car, phone.Log.Entries) != history)
                yield return "a device folds to another car than the server";
        }
    }
}
