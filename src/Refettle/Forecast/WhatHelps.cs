using Refettle.Forecast.Policy;
using Refettle.Forecast.Sampling;
using Refettle.Timeline;
using Refettle.Timeline.Spells;

namespace Refettle.Forecast;

/// <summary>Asks of one change at a time what it would bring, by playing the same futures with it.</summary>
internal sealed class WhatHelps(ForecastQuestion question, TableShelf tables, CancellationToken cancel)
{
    private const int MostFutures = 4000;
    private const int MostTasks = 6;
    private const int MostOrders = 6;

    // A task on the deciding chain less often than this can bring little.
    private const double LeastShare = 0.02;

    private readonly ForecastQuestion _question = question with { Futures = Math.Min(question.Futures, MostFutures) };

    public ValueList<Help> Of(ValueList<Deciding> deciding)
    {
        var asItIs = Play(_question);
        return Changes(deciding.Where(one => one.Share.Value >= LeastShare))
            .Select(change => Compare(change.Kind, change.Subject, asItIs, Play(change.Changed)))
            .Where(Shows)
            .OrderByDescending(Better).ThenBy(help => help.Subject, StringComparer.Ordinal).ToValueList();
    }

    /// <summary>Whether it stands out of the sampling.</summary>
    private static bool Shows(Help help) => Shows(help.Earlier) || help.Chance is { } chance && Shows(chance);

    private static bool Shows(Estimate gain) => gain.Value > 2 * gain.StandardError && gain.Value > 0;

    private static double Better(Help help) => help.Chance is { Value: not 0 } chance ? chance.Value * 1e6 : help.Earlier.Value;

    private int[] Play(ForecastQuestion changed) => new Simulation(changed, tables).Run(cancel).Finishes;

    private IEnumerable<(HelpKind Kind, string Subject, ForecastQuestion Changed)> Changes(IEnumerable<Deciding> deciding)
    {
        var (promised, own) =
            (deciding.Where(one => IsPromise(one.Place)), deciding.Where(one => !IsPromise(one.Place) && IsWork(one.Place)));
        foreach (var one in own.Take(MostTasks))
            yield return (HelpKind.Halve, one.Id, With(one.Place, was => new Eased(was, 0.5, 0)));
        foreach (var one in promised.Take(MostOrders))
            yield return (HelpKind.Sooner, one.Id, With(one.Place, was => new Eased(was, 1, _question.Sooner)));
        foreach (var extra in _question.Extra)
            yield return (HelpKind.Extra, extra.Says, With(extra));
        foreach (var missed in _question.Missed.Where(missed => missed.Chance > 0))
            yield return (HelpKind.KeepSpells, _question.Project.Resources[missed.Resource].Id,
                _question with { Missed = _question.Missed.Where(other => other != missed).ToValueList() });
    }

    private bool IsPromise(int place) => _question.Uncertainties[place] is Promise;

    private bool IsWork(int place) =>
        _question.Project.Activities[place] is { Pace: not Pace.WallClock } || _question.Uncertainties[place] is not Certain;

    private ForecastQuestion With(int place, Func<Uncertainty, Uncertainty> eased) => _question with
    {
        Uncertainties = _question.Uncertainties.Select((was, other) => other == place ? eased(was) : was).ToValueList(),
    };

    private ForecastQuestion With(ExtraSpell extra) => _question with
    {
        Project = _question.Project with
        {
            Resources = _question.Project.Resources.Select((resource, place) => place == extra.Resource && resource.Open is { } open
                ? resource with { Open = Stretches.Joined(open.Append(extra.Window)) }
                : resource).ToValueList(),
        },
    };

    private Help Compare(HelpKind kind, string subject, int[] before, int[] after)
    {
        var pairs = before.Zip(after).ToArray();
        var both = pairs.Where(pair => pair is { First: < OpenTimes.Never, Second: < OpenTimes.Never })
            .Select(pair => (double)(pair.First - pair.Second)).ToArray();
        var chance = _question.Date is { } date
            ? Estimate.OfMean(Array.ConvertAll(pairs, pair => (pair.Second <= date ? 1.0 : 0) - (pair.First <= date ? 1.0 : 0)))
            : (Estimate?)null;
        return new(kind, subject, chance, both.Length > 1 ? Estimate.OfMean(both) : default);
    }
}
