using Microsoft.AspNetCore.Mvc;
using Refettle.Access;
using Refettle.Logbook;
using Refettle.Server.Guards;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The heavy questions, asked of the car as its log tells it.</summary>
internal static class QuestionRoutes
{
    internal const long MostBytes = 200_000;
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    public static void Map(IEndpointRouteBuilder api)
    {
        Map(api, "reach", (planner, car, question, cancel) => planner.Reach(car, question, cancel));
        Map(api, "within", (planner, car, question, cancel) => planner.Within(car, question, cancel: cancel));
        Map(api, "others", (planner, car, question, cancel) => planner.Others(car, question, cancel: cancel));
        api.MapPost("cars/{car}/compare", CompareAsync).WithMetadata(new BodyLimit(MostBytes));
    }

    private static void Map<T>(IEndpointRouteBuilder api, string verb, Func<IAccessPlanner, Car, Question, CancellationToken, T> answer) =>
        api.MapPost($"cars/{{car}}/{verb}",
            (string car, HttpRequest request, Garage garage, [FromServices] IAccessPlanner? planner, CancellationToken cancel) =>
            AnswerAsync<IAccessPlanner, Question, T>(car, request, garage, planner, QuestionCheck.Of, answer, cancel))
            .WithMetadata(new BodyLimit(MostBytes));

    private static Task<IResult> CompareAsync(
        string car, HttpRequest request, Garage garage, [FromServices] IAccessPlanner? planner, CancellationToken cancel) =>
        AnswerAsync<IAccessPlanner, Pair, Comparison>(car, request, garage, planner, FaultsOf,
            (asked, of, pair, stop) => asked.Compare(of, new() { Goals = pair.First }, pair.Second, stop), cancel);

    private static ValueList<Fault> FaultsOf(Car car, Pair pair) =>
        new[] { pair.First, pair.Second,
            pair.First.Concat(pair.Second).Distinct().ToValueList() }.SelectMany(goals => QuestionCheck.Of(car, new() { Goals = goals }))
            .Distinct().ToValueList();

    /// <summary>Whoever leaves, or waits too long, ends the search; the best answer so far is then given with its bound.</summary>
    internal static Task<IResult> AnswerAsync<TPlanner, TAsked, T>(
        string id, HttpRequest request, Garage garage, TPlanner? planner,
        Func<Car, TAsked, ValueList<Fault>> check, Func<TPlanner, Car, TAsked, CancellationToken, T> answer, CancellationToken left)
        where TPlanner : class =>
        AskedAsync<TPlanner, TAsked>(id, request, garage, planner, async (planning, history, asked) =>
        {
            if (check(history.Car, asked) is { Count: > 0 } faults)
                return Problems.Of(StatusCodes.Status422UnprocessableEntity, "That cannot be asked of this car", "See the faults.", faults);
            using var patience = CancellationTokenSource.CreateLinkedTokenSource(left);
            patience.CancelAfter(Patience);
            return Results.Json(await Task.Run(() => answer(planning, history.Car, asked, patience.Token), left), ExchangeJson.Options);
        }, left);

    /// <summary>Whoever leaves ends the work.</summary>
    /// <param name="refusal">The title of the problem when it cannot be made.</param>
    internal static Task<IResult> MadeAsync<TAsked, T>(
        string id, HttpRequest request, Garage garage, IAccessPlanner? planner, string refusal,
        Func<IAccessPlanner, CarHistory, TAsked, Result<T>> make, CancellationToken left) =>
        AskedAsync<IAccessPlanner, TAsked>(id, request, garage, planner, async (planning, history, asked) =>
        {
            var made = await Task.Run(() => make(planning, history, asked), left);
            return made.IsGood
                ? Results.Json(made.Value, ExchangeJson.Options)
                : Problems.Of(StatusCodes.Status422UnprocessableEntity, refusal, "See the faults.", made.Faults);
        }, left);

    /// <summary>Goes on once there is a planner, the car, and a question that can be read.</summary>
    private static async Task<IResult> AskedAsync<TPlanner, TAsked>(
        string id, HttpRequest request, Garage garage, TPlanner? planner, Func<TPlanner, CarHistory, TAsked, Task<IResult>> answer,
        CancellationToken left)
        where TPlanner : class
    {
        if (planner is null)
            return Problems.Of(StatusCodes.Status503ServiceUnavailable, "This server has no planner",
                "Start it with the planner, or ask on the command line.");
        if (garage.History(id) is not { } history)
            return Problems.NoSuchCar(id);
        var asked = await Body.ReadAsync<TAsked>(request, left);
        return asked.IsGood ? await answer(planner, history, asked.Value) : Problems.Of(asked.Faults[0]);
    }
}
