using Microsoft.AspNetCore.Mvc;
using Refettle.Access;
using Refettle.Judging;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;
using Refettle.Web.Garage;

namespace Refettle.Server.Api;

/// <summary>The ladders of tries, and the heavy questions about stuck joints and verdicts.</summary>
internal static class JudgingRoutes
{
    public static void Map(IEndpointRouteBuilder api, LadderSet ladders)
    {
        api.MapGet("ladders", () => Results.Json(ladders, ExchangeJson.Options));
        api.MapPost("cars/{car}/open-up",
            (string car, HttpRequest request, Garage garage, [FromServices] IAccessPlanner? planner, CancellationToken cancel) =>
            QuestionRoutes.AnswerAsync<IAccessPlanner, OpenUpAsked, OpenUpReport>(car, request, garage, planner,
                (of, asked) => Faults(of, asked, ladders), (planning, of, asked, stop) => OpenUp(planning, of, asked, ladders, stop),
                cancel))
            .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));
        api.MapPost("cars/{car}/verdicts",
            (string car, HttpRequest request, Garage garage, [FromServices] IAccessPlanner? planner, CancellationToken cancel) =>
            QuestionRoutes.AnswerAsync<IAccessPlanner, VerdictAsked, ValueList<VerdictAnswer>>(car, request, garage, planner, Faults,
                (planning, of, asked, stop) =>
                new VerdictPlanner(planning)
                    .Of(of, new() { Parts = asked.Parts, Planned = asked.Planned, DaysLeft = asked.DaysLeft, Ladders = ladders }, stop),
                    cancel))
            .WithMetadata(new BodyLimit(QuestionRoutes.MostBytes));
    }

    private static ValueList<Fault> Faults(Car car, VerdictAsked asked) =>
        [.. Unknown("part", asked.Parts, car.Structure.Parts.Select(part => part.Id)),
            .. asked.Planned.Count == 0 ? [] : QuestionCheck.Of(car, new() { Goals = asked.Planned })];

    private static ValueList<Fault> Faults(Car car, OpenUpAsked asked, LadderSet ladders) => asked.Joints.Count == 0
        ? [new("open up", "no joint is named", "Name one or more.")]
        : [.. Unknown("joint", asked.Joints, car.Structure.Joints.Select(joint => joint.Id)), .. Free(car, asked, ladders)];

    private static IEnumerable<Fault> Free(Car car, OpenUpAsked asked, LadderSet ladders) => car.Structure.Joints
        .Where(joint => asked.Joints.Contains(joint.Id) && TriesSoFar.Of(car, joint, ladders).Condition == JointCondition.Freed)
        .Select(joint => new Fault($"joint {joint.Id}", "it came free already", "Leave it out."));

    private static IEnumerable<Fault> Unknown(string kind, ValueList<string> asked, IEnumerable<string> known)
    {
        var all = known.ToHashSet();
        return asked.Where(one => !all.Contains(one))
            .Select(one => new Fault($"{kind} {one}", "the car has none of this name",
                NearNames.Ask(one, all, "See the list of the car.")));
    }

    /// <summary>A question that cannot be answered says why in its report.</summary>
    private static OpenUpReport OpenUp(IAccessPlanner planner, Car car, OpenUpAsked asked, LadderSet ladders, CancellationToken stop)
    {
        var made = OpenUpCase.Of(car, asked.Joints.Distinct().ToValueList(), [], ladders, new([], [AtHand.All]), Later.CommonPractice,
            planner, stop);
        return made.IsGood
            ? OpenUpReport.Of(made.Value, OpenUpPlanner.Best(made.Value.Question, () => new Random(1)))
            : OpenUpReport.Refused(made.Faults);
    }
}
