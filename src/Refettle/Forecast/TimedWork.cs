using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;

namespace Refettle.Forecast;

/// <summary>Work that was timed, beside what it was planned to take.</summary>
/// <param name="Planned">Null when no figure is known for it.</param>
/// <param name="Says">What was done.</param>
/// <param name="About">The fact, <c>job x</c>, or <c>joint x</c> that was tried.</param>
public sealed record TimedWork(Guid Entry, string Says, string About, string? Job, Minutes? Planned, Minutes Took)
{
    /// <summary>All timed work of a car that is in force, in the order of its log. Of a mark that is made again the minutes count once,
    /// those told first; what it was planned to take is looked up in the description as it is now.</summary>
    public static ValueList<TimedWork> Of(CarHistory history)
    {
        var (car, catalogue) = (history.Car, new WayCatalogue(new CarStanding(history.Car), []));
        var told = new HashSet<string>();
        return (from line in history.Lines
                where line.Standing == Standing.InForce
                let work = Timed(line)
                where work is not null && (told.Add(work.Says) || !line.ChangesNothing)
                select work).ToValueList();

        TimedWork? Timed(HistoryLine line) => line.Happening switch
        {
            StepDone { Took: { } took } done =>
                new(line.Entry.Id, done.Fact.ToString(), done.Fact.ToString(), null, Find(done.Fact, done.Way, cost => cost.Open), took),
            StepReversed { Took: { } took } back =>
                new(line.Entry.Id, $"{back.Fact} taken back", back.Fact.ToString(), null, Find(back.Fact, null, cost => cost.Close), took),
            Tried { Try: { Took: { } took } attempt } =>
                new(line.Entry.Id, $"{attempt.Joint} tried", $"joint {attempt.Joint}", null, null, took),
            JobDone { Took: { } took } done =>
                new(line.Entry.Id, $"job {done.Job}", $"job {done.Job}", done.Job, car.Jobs.FirstOrDefault(job => job.Id == done.Job)?.Work,
                    took),
            _ => null,
        };

        Minutes? Find(Fact fact, string? way, Func<Cost, Minutes> minutes)
        {
            if (!Exists(car, fact))
                return null;
            var sources = catalogue.Of(fact).ToList();
            var source = sources.Find(source => source.Name == way) ?? (sources.Count == 1 ? sources[0] : null);
            return source is null || minutes(source.Cost) == Minutes.Zero ? null : minutes(source.Cost);
        }
    }

    /// <summary>What a user's timed work teaches about his overrun.</summary>
    public static OverrunBelief Learn(IEnumerable<TimedWork> timed) => OverrunBelief.Start.After(
        timed.Where(work => work.Planned is not null).Select(work => ((double)work.Planned!.Value.Value, (double)work.Took.Value)));

    private static bool Exists(Car car, Fact fact) => fact.Kind switch
    {
        FactKind.Off =>
            car.Structure.Parts.Any(part => part.Id == fact.Subject) || car.Structure.SubAssemblies.Any(unit => unit.Id == fact.Subject),
        FactKind.Free => car.Structure.Parts.Any(part => part.Id == fact.Subject),
        FactKind.Open => car.Structure.Joints.Any(joint => joint.Id == fact.Subject),
        FactKind.State => car.Structure.States.Any(state => state.Id == fact.Subject),
        _ => car.Structure.Spaces.Any(space => space.Id == fact.Subject),
    };
}
