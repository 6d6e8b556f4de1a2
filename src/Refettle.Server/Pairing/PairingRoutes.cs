using System.Threading.RateLimiting;
using Microsoft.AspNetCore.RateLimiting;
using Refettle.Server.Api;
using Refettle.Server.Guards;
using Refettle.Storage.Pairing;

namespace Refettle.Server.Pairing;

/// <summary>How a device is paired, and how the owner sees and revokes devices.</summary>
public static class PairingRoutes
{
    public const string Path = "/pair";

    /// <summary>Where a phone fetches what it is to trust.</summary>
    public const string AuthorityPath = Path + "/authority.crt";

    private const string Slowly = "pairing";
    private const int TriesAMinute = 10;
    private const long MostBytes = 4_000;
    private static readonly TimeSpan CookieLasts = TimeSpan.FromDays(400);

    /// <summary>Codes have 50 bits; at ten tries a minute for all comers nobody guesses one in its ten minutes.</summary>
    internal static void AddLimit(IServiceCollection services) => services.AddRateLimiter(limits =>
    {
        limits.AddFixedWindowLimiter(Slowly,
            window => (window.PermitLimit, window.Window, window.QueueLimit) = (TriesAMinute, TimeSpan.FromMinutes(1), 0));
        limits.OnRejected = async (rejected, cancel) => await Page("", "Too many tries. Wait a minute.",
            StatusCodes.Status429TooManyRequests).ExecuteAsync(rejected.HttpContext);
    });

    /// <param name="authority">In PEM; null when nothing is served encrypted.</param>
    internal static void Map(IEndpointRouteBuilder app, IEndpointRouteBuilder api, Doorway doorway, string? authority)
    {
        if (doorway.Devices is not { } devices)
            return;
        app.MapGet(Path, (string? code) => Page(code ?? "", null));
        app.MapGet($"{Path}/style.css", () => Results.Text(PairingPage.Style, "text/css"));
        if (authority is not null)
            app.MapGet(AuthorityPath, () => Results.Text(authority, "application/x-x509-ca-cert"));
        app.MapPost(Path, (HttpContext context, CancellationToken cancel) => PairAsync(context, devices, cancel))
            .RequireRateLimiting(Slowly).WithMetadata(new BodyLimit(MostBytes));
        api.MapGet("devices", () => Results.Json(devices.All(), ExchangeJson.Options));
        api.MapPost("devices/{id}/revoke", (string id) => devices.Revoke(id) is { IsGood: true } gone
            ? Results.Json(gone.Value, ExchangeJson.Options)
            : Problems.Of(StatusCodes.Status404NotFound, $"No device {id} is paired", "Look at the list of devices."));
    }

    private static IResult Page(string code, string? wrong, int status = StatusCodes.Status200OK) =>
        Results.Text(PairingPage.Of(code, wrong), "text/html; charset=utf-8", statusCode: status);

    private static async Task<IResult> PairAsync(HttpContext context, PairedDevices devices, CancellationToken cancel)
    {
        if (!context.Request.HasFormContentType)
            return Problems.Of(StatusCodes.Status415UnsupportedMediaType, "The body is not a form", "Use the page that the code leads to.");
        var form = await context.Request.ReadFormAsync(cancel);
        var paired = devices.Pair(form["code"].ToString(), form["name"].ToString());
        if (!paired.IsGood)
            return Page("", $"{paired.Faults[0].Place}: {paired.Faults[0].Found}. {paired.Faults[0].Mend}", StatusCodes.Status403Forbidden);
        context.Response.Cookies.Append(DeviceGate.Cookie, paired.Value.Token, new()
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            MaxAge = CookieLasts,
            IsEssential = true,
        });
        return Results.Redirect("/");
    }
}
