using Refettle.Access;
using Refettle.Judging;
using Refettle.Kits;

namespace Refettle.Discovery;

/// <summary>Something that may be worth doing, not priced yet.</summary>
internal sealed record Candidate(Job Job, OfferSource Source);

/// <summary>What may be worth doing on a car besides what is chosen; where two mean the same the one with the better reason.</summary>
internal static class Candidates
{
    /// <summary>Kinds of parts that are renewed when they are got at. Common practice, no source.</summary>
    private static readonly string[] Wearing = ["seal", "bearing", "bush", "hose", "boot"];

    public static IEnumerable<Candidate> Of(SinceOpenQuestion question)
    {
        var (car, standing) = (question.Car, new CarStanding(question.Car));
        var known = question.Goals.Concat(car.Jobs.SelectMany(job => job.Goals)).Concat(car.Done).ToHashSet();
        foreach (var job in car.Jobs
            .Where(job => !car.JobsDone.Contains(job.Id) && job.Goals.Count > 0 && job.Goals.Any(goal => !question.Goals.Contains(goal))
                && QuestionCheck.CanBeAsked(standing, job.Goals)))
            yield return new(job, OfferSource.Job);
        foreach (var candidate in Findings(car).Concat(question.Kits.SelectMany(kit => OfKit(car, kit))).Concat(Reach(car)))
        {
            if (QuestionCheck.CanBeAsked(standing, candidate.Job.Goals) && car.Jobs.All(job => job.Id != candidate.Job.Id)
                && candidate.Job.Goals.Any(goal => !known.Contains(goal))
                && !candidate.Job.Goals.Any(goal => known.Contains(Loosely(goal))))
            {
                known.UnionWith(candidate.Job.Goals);
                yield return candidate;
            }
        }
    }

    /// <summary>Off and free mean the same here.</summary>
    private static Fact Loosely(Fact goal) =>
        goal.Kind switch { FactKind.Off => Fact.Free(goal.Subject), FactKind.Free => Fact.Off(goal.Subject), _ => goal };

    private static IEnumerable<Candidate> Findings(Car car) => car.Structure.Parts
        .Where(part => !part.Fixed && car.Verdicts.All(verdict => verdict.Part != part.Id || verdict.Kind != VerdictKind.Keep)
            && Condition.Of(car, $"part {part.Id}").Worst >= Severeness.Worn)
        .Select(part => new Candidate(Maybe($"renew-{part.Id}", $"{part.Name}: put right or renew", Fact.Off(part.Id), Origin.Measured),
            OfferSource.Finding));

    private static IEnumerable<Candidate> Reach(Car car) =>
        car.Structure.Spaces
            .Select(space => new Candidate(
                Maybe($"look-{space.Id}", $"{space.Name}: look, clean, coat", Fact.Reach(space.Id), Origin.Default), OfferSource.Reach))
            .Concat(car.Structure.Parts.Where(part => !part.Fixed && Wearing.Contains(ConditionScales.For(part)[0].Id))
                .Select(part => new Candidate(Maybe($"renew-{part.Id}", $"{part.Name}: look, renew", Fact.Off(part.Id), Origin.Default),
                    OfferSource.Reach)));

    private static Job Maybe(string id, string name, Fact goal, Origin origin) =>
        new() { Id = id, Name = name, Wish = Wish.Maybe, Goals = [goal], Origin = origin };

    /// <summary>What a kit tells of, once for each place on the car where it was added.</summary>
    private static IEnumerable<Candidate> OfKit(Car car, Kit kit) => kit.WhileOpen.Count == 0 ? [] : car.Structure.Parts
        .Where(part => part.Kit is { } instance && (instance == kit.Id || instance.StartsWith($"{kit.Id} ", StringComparison.Ordinal)))
        .Select(part => part.Kit![kit.Id.Length..].Trim()).Distinct()
        .SelectMany(prefix => kit.WhileOpen.Select(job => new Candidate(Filled(job, prefix), OfferSource.Kit)));

    private static Job Filled(Job job, string prefix)
    {
        var spot = Spots.TryParse(prefix, out var side) ? side.Words() : prefix;
        var values = new Dictionary<string, string>
        {
            ["p"] = prefix.Length == 0 ? "" : $"{prefix}-",
            ["side"] = prefix,
            ["Side"] = spot.Length == 0 ? "" : char.ToUpperInvariant(spot[0]) + spot[1..]
        };
        return job with
        {
            Id = Braces.Fill(job.Id, values),
            Name = Braces.Fill(job.Name, values),
            Goals = job.Goals.Select(goal => new Fact(goal.Kind, Braces.Fill(goal.Subject, values))).ToValueList(),
        };
    }
}
