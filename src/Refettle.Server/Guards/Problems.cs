using Microsoft.AspNetCore.Diagnostics;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Server.Guards;

/// <summary>What is sent when something cannot be done: <c>application/problem+json</c> (RFC 9457), never a stack trace.</summary>
internal static class Problems
{
    private const string ContentType = "application/problem+json";

    public static IResult Of(int status, string title, string mend, params IEnumerable<Fault> faults) =>
        Results.Json(new Problem(title, mend, faults.ToValueList()), ExchangeJson.Options, ContentType, status);

    public static IResult Of(Fault fault) => Of(StatusCodes.Status400BadRequest, fault.Found, fault.Mend, fault);

    public static IResult NoSuchCar(string car) =>
        Of(StatusCodes.Status404NotFound, $"There is no car {car} in this garage", "Look at the list of cars.");

    /// <summary>For what nobody foresaw. What broke goes to the server's own log.</summary>
    public static Task Broke(HttpContext context) => (context.Features.Get<IExceptionHandlerFeature>()?.Error is LogbookException unread
        ? Of(StatusCodes.Status503ServiceUnavailable, "The store cannot be read", "See the faults.", [unread.Fault])
        : Of(StatusCodes.Status500InternalServerError, "Something broke in the server",
            "What was acknowledged is kept. The server's log says more.")).ExecuteAsync(context);
}
