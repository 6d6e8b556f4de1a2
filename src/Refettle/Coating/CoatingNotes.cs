using Refettle.Access;
using Refettle.Timeline.Spells;

namespace Refettle.Coating;

/// <summary>What a plan assumed.</summary>
internal static class CoatingNotes
{
    public static ValueList<Fault> Of(
        CoatingQuestion question, List<PartProgress> parts, ValueList<Occasion> occasions, ValueList<SpraySession> sessions)
    {
        var (car, standing) = (question.Car, new CarStanding(question.Car));
        var used = parts.SelectMany(part => part.ToCome.Select(coat => coat.Product)).Distinct().Order(StringComparer.Ordinal)
            .Select(id => car.Coating.Product(id)!).ToList();
        var on = parts.Where(part => !standing.IsTrue(Fact.Off(part.Part))).Select(part => car.Structure.PartName(part.Part)).ToList();
        return new Fault?[]
        {
            car.Calendar.Spells.All(spell => spell.Whose is not null)
                ? new("spells", "none is entered: one session a day at ten is taken to be possible",
                    "Say when you are there: refettle spell add.")
                : null,
            parts.Count > 0 && occasions.Any(one => one.Air is null)
                ? new("climate",
                    "nothing is known of the air on some days: none of them is ruled out, and in windows the sheet's own temperature stands for them", "Say it by month, refettle climate jan=12C/70%, or read it on the day.")
                : null,
            parts.Count > 0 && occasions.Any(one => one.Air is not null)
                ? new("climate", "the air is that of your hours there; nights are colder, and a coat takes longer then",
                    "Read the coat before you go on: the sheet's word and your finger nail count, not the plan.")
                : null,
            on.Count > 0
                ? new("parts", $"{string.Join("; ", on)}: still on the car, planned as though off and bare already",
                    "Ask again once they are off, or with --from.")
                : null,
            SpellsToCome.Until(car.Calendar.Spells.Where(spell => spell.Whose is null),
                question.From.Date.PlusDays(question.Days)).LastEntered is { } last && sessions.Any(session => session.At.Date > last)
                ? new("spells", $"none is entered after {DayWords.Day(last)}: sessions after it count on the same rhythm",
                    "Enter them: refettle spell add.") : null,
        }.OfType<Fault>()
            .Concat(SprayRoom.Notes(car, parts))
            .Concat(parts.SelectMany(part => part.Strange
                .Select(coat => new Fault($"part {part.Part}",
                    $"{coat.Product} of {DayWords.Moment(coat.At)} has no place in {part.System.Name} there and is not counted",
                    "Strike the entry, or give the part another system."))))
            .Concat(used.Where(product => product.Recoat.Any(row => row is { ClosesHours: null, HasNoEnd: false }))
                .Select(product => new Fault($"product {product.Id}", "its longest time to the next coat is not entered: no end is kept to",
                    "Look it up: recoat=16h..7d@20C, or recoat=16h..open@20C.")))
            .Select(fault => fault with { Severity = Severity.Note }).ToValueList();
    }
}
