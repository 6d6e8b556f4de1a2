using Microsoft.AspNetCore.Mvc;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Server.Guards;

namespace Refettle.Server.Api;

/// <summary>Questions about the scope.</summary>
internal static class ScopeRoutes
{
    private const int MostPoints = 100;

    public static void Map(IEndpointRouteBuilder api)
    {
        Map<ScopeQuestion, ScopeAnswer>(api, "scope", ScopeQuestionCheck.Of,
            (planner, car, question, cancel) => planner.Choose(car, question, cancel));
        Map<ScopeAnswer, ScopeReasons>(api, "scope/reasons", Known, (planner, car, answer, cancel) => planner.Explain(car, answer, cancel));
        Map<FrontierQuestion, ValueList<FrontierPoint>>(api, "scope/frontier", (car, asked) => ScopeQuestionCheck.Of(car, asked.Question),
            (planner, car, asked, cancel) =>
            planner.Frontier(car, asked.Question, asked.Limit, Math.Clamp(asked.Points, 2, MostPoints), cancel: cancel));
        Map<BrakeQuestion, Brake>(api, "scope/add", Known,
            (planner, car, asked, cancel) => planner.Add(asked.With(car), asked.Question, asked.Job, asked.Beside, cancel));
    }

    private static void Map<TAsked, T>(
        IEndpointRouteBuilder api, string path, Func<Car, TAsked, ValueList<Fault>> check,
        Func<IScopePlanner, Car, TAsked, CancellationToken, T> answer) =>
        api.MapPost($"cars/{{car}}/{path}",
            (string car, HttpRequest request, Garage garage, [FromServices] IScopePlanner? planner, CancellationToken cancel) =>
            QuestionRoutes.AnswerAsync(car, request, garage, planner, check, answer, cancel))
            .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));

    private static ValueList<Fault> Known(Car car, ScopeAnswer answer) =>
        [.. ScopeQuestionCheck.Of(car, answer.Question), .. answer.Chosen.SelectMany(job => Known(car, job))];

    private static ValueList<Fault> Known(Car car, BrakeQuestion asked)
    {
        var entered = asked.As is { } job
            ? HappeningCheck.Of(new(car, [], []), new JobEntered(job)).Where(fault => fault.Severity == Severity.Error).ToValueList()
            : [];
        return entered.Count > 0 ? entered
            : [.. ScopeQuestionCheck.Of(asked.With(car), asked.Question),
                .. asked.Beside.Append(asked.Job).SelectMany(one => Known(asked.With(car), one))];
    }

    private static IEnumerable<Fault> Known(Car car, string job) => car.Jobs.Any(known => known.Id == job) && !car.JobsDone.Contains(job)
        ? []
        : [new($"job {job}", "there is no such open job", "The list may have changed: ask again.")];
}
