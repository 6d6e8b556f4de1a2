using System.Net;
using Refettle.Server.Guards;
using Refettle.Storage.Pairing;

namespace Refettle.Server.Pairing;

/// <summary>Lets in who sits at this machine and devices that were paired. From elsewhere only pairing itself and the
/// health of the server can be reached.</summary>
internal sealed class DeviceGate(RequestDelegate next, Doorway doorway)
{
    /// <summary>The cookie with a device's token. No script can read it, and no other site's page can send it.</summary>
    public const string Cookie = "refettle-device";

    public Task InvokeAsync(HttpContext context) =>
        IsOpenToAll(context.Request.Path) || IsHere(context.Connection) || IsPaired(context.Request)
            ? next(context)
            : TurnAwayAsync(context);

    public static bool IsOpenToAll(PathString path) => path.StartsWithSegments(PairingRoutes.Path) || path == "/api/health";

    /// <summary>Only who sits at this machine comes in at 127.0.0.1.</summary>
    private static bool IsHere(ConnectionInfo connection) => IPAddress.Loopback.Equals(connection.LocalIpAddress);

    private bool IsPaired(HttpRequest request) => Of(request, doorway.Devices) is not null;

    /// <summary>The paired device that asks; null when it is none.</summary>
    public static PairedDevice? Of(HttpRequest request, PairedDevices? devices) =>
        request.Cookies.TryGetValue(Cookie, out var token) && token is { Length: > 0 } ? devices?.Find(token) : null;

    private static async Task TurnAwayAsync(HttpContext context)
    {
        if (context.Request.Path.StartsWithSegments("/api"))
            await Problems.Of(StatusCodes.Status401Unauthorized, "This device is not paired with the garage",
                "On the garage's own machine: refettle pair. What you entered stays on this device until then.").ExecuteAsync(context);
        else
            context.Response.Redirect(PairingRoutes.Path);
    }
}
