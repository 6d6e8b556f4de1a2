using Refettle.Access;
using Refettle.Bench.Coating;
using Refettle.Timeline.Spells;

namespace Refettle.Timeline.Network;

/// <summary>The coats of a part as tasks: by the system that its owner chose, with the windows of the products' data
/// sheets, else the standard ones.</summary>
internal sealed class CoatTasks(NetworkDraft draft, Car car, PartsWaits parts)
{
    /// <summary>Coats that are on are tasks done at their time.</summary>
    /// <returns>What has to be over before the part is handled.</returns>
    public string Add(Part part, string bare)
    {
        var system = car.Coating.Of(part.Id);
        var progress = system is null ? null : PartProgress.Of(car.Coating, part.Id, system);
        var coats = system is null
            ? StandardCoats.EpoxyAndTopCoat
            : system.Stages.Select(stage => (car.Coating.Product(stage.Product)!, stage.Coats)).ToValueList();
        var (last, least, most, why) =
            (bare, 0, (int?)StandardCoats.BareMinutes, $"bare metal is coated within {StandardCoats.BareMinutes / 60} h");
        foreach (var ((product, stated), i) in coats.Select((coat, i) => (coat, i)))
        {
            var count = stated;
            if (i == 0 && progress?.Last is not null)
                draft.Change(bare,
                    task => task with
                    {
                        Mark = new(bare, TaskProgress.Done,
                            car.Coating.Applied.First(coat => coat.Parts.Contains(part.Id)).At.PlusMinutes(-StandardCoats.CoatMinutes))
                    });
            if (progress is { Last: { } begun } && progress.Stage == i && progress.CoatsLeft < stated)
            {
                var half = draft.Add(Coat(part, product, stated - progress.CoatsLeft, i + 1) with
                { Id = $"coat.{part.Id}.{i + 1}.begun", Mark = new($"coat.{part.Id}.{i + 1}.begun", TaskProgress.Done, begun.At) });
                draft.Link(last, half, least, most, why);
                (last, (least, most), count) = (half, Window(part, product, isCoatedOver: true), progress.CoatsLeft);
                why = Words(least, most);
            }

            var task = draft.Add(Coat(part, product, count, i + 1) with { Mark = Done(part, progress, i) });
            draft.Link(last, task, least, most, why);
            parts.Take(task, $"coat {Word(product)}", "paint in hand", null);
            (last, (least, most)) = (task, Window(part, product, i + 1 < coats.Count));
            why = Words(least, most);
        }

        var (minutes, origin) = Handle(coats[coats.Count - 1].Item1);
        var cure = draft.Add(TryTasks.Wait($"wait.cure.{part.Id}", $"Paint cures: {part.Name}", new(minutes), origin));
        draft.Link(last, cure);
        return cure;
    }

    private static string Words(int least, int? most) => most is { } end ? $"recoat window {least / 60} to {end / 60} h" : "";

    private static WorkTask Coat(Part part, CoatingProduct product, int coats, int number) => new()
    {
        Id = $"coat.{part.Id}.{number}",
        Kind = TaskKind.Coat,
        Coat = Word(product),
        Says = $"{(coats > 1 ? $"{coats} × " : "")}{product.Name}: {part.Name}",
        Takes = new(StandardCoats.CoatMinutes * coats),
        Origin = Origin.CommonPractice,
        Pace = Pace.Unbroken,
        Uses = [Needed.SprayCorner],
        Air = AirNeeds.Of(product),
        Cautions = CoatingCautions.Of(product),
    };

    /// <summary>What a coat takes of the shelf: <c>Epoxy primer</c> as <c>epoxy primer</c>.</summary>
    public static string Word(CoatingProduct product) => char.ToLowerInvariant(product.Name[0]) + product.Name[1..];

    /// <summary>The window in minutes, narrowed to the safe side for all months in which the coat may go on.</summary>
    private (int Least, int? Most) Window(Part part, CoatingProduct product, bool isCoatedOver)
    {
        var months = Months(product);
        if ((months.Count == 0 ? RecoatHours.AsStated(product) : RecoatHours.Of(product, months.Min(), months.Max())) is { } hours)
            return ((int)Math.Ceiling(hours.Opens * 60), (int?)(hours.Closes * 60));
        if (isCoatedOver)
            draft.Notes.Add(new($"product {product.Id}", $"when {part.Name} may be coated over is not entered: no window is kept to",
                $"Look up the recoat window on its data sheet: refettle product set {product.Id} recoat=16h..7d@20C.")
            { Severity = Severity.Note });
        return (0, null);
    }

    /// <summary>Scaled to the coldest month in which the coat may go on.</summary>
    private (int Minutes, Origin Origin) Handle(CoatingProduct product)
    {
        if (product.Figures.FirstOrDefault(figure => figure.Kind == FigureKind.Handle) is not { } handle)
            return (StandardCoats.HandleMinutes, Origin.CommonPractice);
        var stated = (double)(product.Figure(FigureKind.At) ?? 20);
        var coldest = Months(product).DefaultIfEmpty(stated).Min();
        return ((int)Math.Ceiling((double)handle.Value * 60 * Math.Max(1, Cure.Factor(stated, coldest))), handle.Origin);
    }

    /// <summary>°C of the months in which the coat may go on.</summary>
    private List<double> Months(CoatingProduct product) =>
        [.. car.Calendar.Climate.Where(month => !(month.Celsius < product.Figure(FigureKind.LeastAir)))
            .Select(month => (double)month.Celsius)];

    private static TaskMark? Done(Part part, PartProgress? progress, int stage) => stage < progress?.Over.Count
        ? new($"coat.{part.Id}.{stage + 1}", TaskProgress.Done, progress.Over[stage].At)
        : null;
}
