namespace Refettle.Web.Garage;

/// <summary>This browser as one that writes entries.</summary>
public sealed class ThisDevice(IKeeper keeper, TimeProvider clock)
{
    private const string Key = "device";

    /// <summary>Its name in them; made when it is first asked for.</summary>
    public async Task<string> NameAsync()
    {
        if (await keeper.GetAsync<string>(Key) is { } known)
            return known;
        var made = $"browser-{Guid.CreateVersion7(clock.GetUtcNow()):n}";
        await keeper.PutAsync(Key, made);
        return made;
    }
}
