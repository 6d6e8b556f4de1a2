using Microsoft.AspNetCore.Components;

namespace Refettle.Web.Pages;

/// <summary>The pages that can be shown before the further part of the program is here: the garage, and a car's own.</summary>
public static class FirstPages
{
    /// <param name="path">Below the base address.</param>
    /// <returns>Null where another page is asked for.</returns>
    public static RouteData? At(string path) => Words(path) switch
    {
        [""] => new(typeof(GaragePage), new Dictionary<string, object?>()),
        ["car", { Length: > 0 } id] =>
            new(typeof(NextPage), new Dictionary<string, object?> { [nameof(NextPage.Id)] = Uri.UnescapeDataString(id) }),
        _ => null,
    };

    /// <summary>The car that a page is about; null where it is about none.</summary>
    public static string? Car(string path) => Words(path) is ["car", { Length: > 0 } id, ..] ? Uri.UnescapeDataString(id) : null;

    private static string[] Words(string path) => path.Split('?', '#')[0].Split('/');
}
