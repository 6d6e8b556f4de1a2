using NodaTime;
using Refettle.Coating.Sessions;

namespace Refettle.Coating;

/// <summary>Plans the coats of all parts that have a system: as few sessions as the windows and the weather allow.</summary>
/// <remarks>A coat counts as put on when its session begins; what is logged counts with its own time. See
/// <see cref="SessionPlanner"/> for the search.</remarks>
public static class CoatingPlanner
{
    public static Result<CoatingPlan> Plan(CoatingQuestion question)
    {
        var faults = question.Check().ToList();
        return faults.Count > 0 ? Result<CoatingPlan>.Bad(faults) : Result<CoatingPlan>.Good(CornerPlan.Of(question, Sound));
    }

    private static CoatingPlan Sound(CoatingQuestion question)
    {
        var book = new RowBook(question);
        var parts = PartProgress.All(question.Car.Coating).Where(part => !part.IsDone).ToList();
        var unplanned = parts.Select(part => Obstacles.Unsaid(book, part)).OfType<UnplannedCoat>().ToList();
        var rows = book.Rows(parts.Where(part => unplanned.All(one => one.Part != part.Part)));
        var answer = SessionPlanner.Plan(book.Ask(rows.Select(row => row.Row).ToValueList()));
        for (var i = 0; i < rows.Count; i++)
        {
            if (answer.Stuck[i] is { } coat)
                unplanned.AddRange(rows[i].Parts
                    .Select(part => answer.NoRoom.Contains(i)
                        ? Obstacles.NoRoom(book, question, part)
                        : Obstacles.Stuck(book, question, part, coat)));
        }

        var sessions = Sessions(question, book, rows, answer);
        return new(sessions, unplanned.OrderBy(one => one.Part, StringComparer.Ordinal).ToValueList(), answer.AtLeast,
            CoatingNotes.Of(question, parts, book.Occasions, sessions));
    }

    private static ValueList<SpraySession> Sessions(
        CoatingQuestion question, RowBook book, List<(ValueList<PartProgress> Parts, CoatRow Row)> rows, SessionAnswer answer) => rows
        .SelectMany((row, i) => answer.Rows[i]
            .Select((occasion, coat) => (row.Parts, Coat: coat, Occasion: occasion,
                Before: coat == 0 ? (int?)null : answer.Rows[i][coat - 1])))
        .SelectMany(one => one.Parts
            .Select(part => (part.ToCome.ElementAt(one.Coat).Product, one.Occasion,
                Part: Sprayed(book, question, part, one.Coat, one.Before))))
        .GroupBy(one => (one.Occasion, one.Product)).OrderBy(session => session.Key.Occasion)
        .ThenBy(session => session.Key.Product, StringComparer.Ordinal)
        .Select(session => SessionSheet.Of(question.Car, book.Product(session.Key.Product), book.Occasions[session.Key.Occasion],
            session.Select(one => one.Part).OrderBy(part => part.Part, StringComparer.Ordinal).ToValueList()))
        .ToValueList();

    private static SprayedPart Sprayed(RowBook book, CoatingQuestion question, PartProgress part, int coat, int? before)
    {
        var (stage, _, coats) = part.ToCome.ElementAt(coat);
        if (coat == 0 && book.IsLate(part))
            return new(part.Part, stage, coats, null, null, book.Product(part.Last!.Product).WhenLate);
        var span = before is { } occasion
            ? RecoatSpan.After(question.Car.Calendar, book.Product(part.ToCome.ElementAt(coat - 1).Product), book.Occasions[occasion].At,
                null)
            : book.Since(part);
        return new(part.Part, stage, coats, span?.Opens, span?.Closes, null);
    }
}
