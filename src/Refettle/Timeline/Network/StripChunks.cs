using Refettle.Access;

namespace Refettle.Timeline.Network;

/// <summary>Steps of a plan that are one piece of work.</summary>
/// <param name="Steps">Consecutive in the plan.</param>
/// <param name="First">Place of the first among the plan's steps.</param>
/// <param name="Stance">The stance that its steps must be done in; null when any will do.</param>
internal sealed record Chunk(ValueList<Step> Steps, int First, string? Stance)
{
    /// <summary>The step it is named after: what comes off last, else its last.</summary>
    public Step Lead => Steps.LastOrDefault(step => step.Fact.Kind == FactKind.Off && !PlanOutline.FollowsByItself(step))
        ?? Steps.LastOrDefault(step => !PlanOutline.FollowsByItself(step)) ?? Steps[Steps.Count - 1];
}

/// <summary>Cuts a plan's steps into pieces of work: what is done at one place, in one posture and stance,
/// up to something that comes off.</summary>
/// <remarks>Pieces are put together from the end of each scene backwards, so that they keep their
/// names while a scene is worked off from its beginning.</remarks>
internal static class StripChunks
{
    /// <summary>Smaller pieces are put together.</summary>
    private const int Small = 30;

    /// <param name="isAlone">Steps that are a piece of their own.</param>
    public static List<Chunk> Of(CarStanding standing, ValueList<Step> steps, Predicate<Step> isAlone)
    {
        var chunks = new List<Chunk>();
        foreach (var scene in Scenes(standing, steps, isAlone))
            chunks.AddRange(Together(Pieces(standing, scene)));
        return chunks;
    }

    /// <summary>Runs of steps with one place, posture and needed stance; what follows by itself stays with what it follows.</summary>
    private static IEnumerable<List<(Step Step, int Index)>> Scenes(CarStanding standing, ValueList<Step> steps, Predicate<Step> isAlone)
    {
        var scene = new List<(Step Step, int Index)>();
        for (var i = 0; i < steps.Count; i++)
        {
            var step = steps[i];
            if (scene.Count > 0
                && (IsAlone(step) || IsAlone(scene[0].Step) || !(PlanOutline.FollowsByItself(step) || IsSame(scene[0].Step, step))))
            {
                yield return scene;
                scene = [];
            }

            scene.Add((step, i));
        }

        if (scene.Count > 0)
            yield return scene;

        bool IsAlone(Step step) => isAlone(step) || standing.IsStance(step.Fact);

        bool IsSame(Step one, Step other) => one.Place == other.Place && one.Posture == other.Posture
            && StepNeeds.Stance(standing, one) == StepNeeds.Stance(standing, other);
    }

    /// <summary>A scene cut after each thing that comes off, with what follows from that.</summary>
    private static List<Chunk> Pieces(CarStanding standing, List<(Step Step, int Index)> scene)
    {
        var pieces = new List<Chunk>();
        var first = 0;
        for (var i = 1; i <= scene.Count; i++)
        {
            if (i < scene.Count && (PlanOutline.FollowsByItself(scene[i].Step) || !EndsPiece(scene, first, i)))
                continue;
            var steps = scene[first..i].Select(item => item.Step).ToValueList();
            var stance = steps.Select(step => StepNeeds.Stance(standing, step)).FirstOrDefault(needed => needed is not null);
            pieces.Add(new(steps, scene[first].Index, stance));
            first = i;
        }

        return pieces;
    }

    private static bool EndsPiece(List<(Step Step, int Index)> scene, int first, int end) =>
        scene[first..end]
            .LastOrDefault(item => !PlanOutline.FollowsByItself(item.Step)).Step is { Fact.Kind: FactKind.Off or FactKind.State };

    private static IEnumerable<Chunk> Together(List<Chunk> pieces)
    {
        var together = new List<Chunk>();
        foreach (var piece in Enumerable.Reverse(pieces))
        {
            if (together.Count > 0 && Minutes(together[^1]) + Minutes(piece) <= 2 * Small
                && (Minutes(together[^1]) < Small || Minutes(piece) == 0))
                together[^1] = new([.. piece.Steps, .. together[^1].Steps], piece.First, piece.Stance ?? together[^1].Stance);
            else
                together.Add(piece);
        }

        return Enumerable.Reverse(together);
    }

    private static decimal Minutes(Chunk chunk) => chunk.Steps.Sum(step => step.Cost.Open.Value);
}
