using System.Text.Json;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Cli.Forms;
using Refettle.Cli.Views;
using Refettle.CloseUp.Refit;
using Refettle.Kits;
using Refettle.Sheets;
using Refettle.Tests.Access;
using Refettle.Timeline.Network;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace Refettle.Cli.Tests.Views;

/// <summary>Every caution that stands at a step is read where the step is printed, and in its JSON; which
/// cautions must stand there is asked of an oracle elsewhere. Common practice, no source: a warning
/// that is not shown warns nobody.</summary>
public sealed class CautionsShownTests
{
    private static readonly AccessPlanner _planner = new(new ReducedSolver());

    public static TheoryData<string> Kits => [.. Shelf.Names];

    private static KitShelf Shelf { get; } = KitShelf.Load(Path.Combine(Content.Folder(AppContext.BaseDirectory), "kits")).Value;

    [Fact]
    public void Of_random_cars()
    {
        var shown = Enumerable.Range(0, 40)
            .Sum(seed => HotCars.Make(seed) is var car ? Shown(car, _planner.Reach(car, RandomCars.Ask(car, seed))) : 0);
        Assert.True(shown > 300, $"{shown}");
    }

    [Theory]
    [MemberData(nameof(Kits))]
    public void Of_every_shipped_kit(string name)
    {
        var kit = Shelf.Find(name).Value;
        var added = KitAddition.Propose(Shelf.Start, kit, kit.Spots.Count == 0 ? Spot.None : kit.Spots[0]).Value.Entry;
        var structure = Shelf.Start.With(added.Added, added.Tied);
        var car = new Car { Id = "car", Name = "Car", Structure = structure, Stance = Car.OnWheels };
        ValueList<Fact> goals = added.Added.Parts.Where(part => !part.Fixed).Select(part => Fact.Off(part.Id)).ToValueList();
        var (plan, kept) = (goals.Count == 0 ? null : _planner.Reach(car, new() { Goals = goals }), new List<Plan>());
        if (plan is { Status: not PlanStatus.Impossible })
            kept.Add(plan);
        else
            kept.AddRange(goals.Select(goal => _planner.Reach(car, Question.For(goal))).Where(one => one.Status != PlanStatus.Impossible));
        Assert.True(kept.Count > 0 || goals.Count == 0, $"{name}: nothing comes off");
        kept.ForEach(one => Shown(car, one));
    }

    [Fact]
    public void A_caution_stands_once_a_day_in_full_first_and_by_its_first_sentence_later()
    {
        var (cautions, day) = (new DayCautions(), new NodaTime.LocalDate(2027, 1, 9));
        var task = new WorkTask
        { Id = "a", Says = "a", Kind = TaskKind.Strip, Takes = new(5), Cautions = [UsualCautions.Load, UsualCautions.Lower] };
        Assert.Equal([UsualCautions.Load, UsualCautions.Lower], cautions.On(day, task));
        Assert.Empty(cautions.On(day, task));
        Assert.Equal(["A raised load is blocked at once: nobody under what only a jack, crane or hoist holds.", UsualCautions.Lower],
            cautions.On(day.PlusDays(1), task));
    }

    /// <returns>How many cautions were looked for.</returns>
    private static int Shown(Car car, Plan plan)
    {
        var strip = plan.Steps.SelectMany(step => step.Cautions).ToList();
        Has(Text(PlanView.Of(plan)), strip);
        Has(Json(PlanForm.Of(plan)), strip.Select(Escaped));
        foreach (var line in PlanOutline.Of(plan).Chapters.SelectMany(chapter => chapter.Lines))
            Has(Text(PlanView.Of(plan with { Steps = [line.Step, .. line.Along] })),
                line.Along.Prepend(line.Step).SelectMany(step => step.Cautions));
        var states = car.Structure.States.Where(state => state.IsStance).Select(state => Fact.State(state.Id)).ToHashSet();
        var apart = car with
        {
            Done = plan.Steps.Select(step => step.Fact).Where(fact => !states.Contains(fact)).ToValueList(),
            Stance = plan.Steps.Select(step => step.Stance).LastOrDefault(car.Stance)
        };
        var sheet = RefitPlanner.Of(new(apart, [], []));
        foreach (var step in sheet.Steps)
            Has(Text(RefitView.Of(apart, sheet with { Steps = [step] }, [], [], int.MaxValue)), step.Cautions);
        var refit = sheet.Steps.SelectMany(step => step.Cautions).Concat(sheet.Checks.SelectMany(check => check.Cautions)).ToList();
        Has(Text(RefitView.Of(apart, sheet, [], [], int.MaxValue)), refit);
        Has(Json(sheet), refit.Select(Escaped));
        return strip.Count + refit.Count;
    }

    private static void Has(string text, IEnumerable<string> cautions) =>
        Assert.All(cautions, caution => Assert.Contains(caution, text, StringComparison.Ordinal));

    private static string Json(object data) => JsonSerializer.Serialize(data, ExchangeJson.Indented);

    private static string Escaped(string text) => JsonSerializer.Serialize(text, ExchangeJson.Options)[1..^1];

    private static string Text(IRenderable shown)
    {
        var text = new StringWriter();
        var console = AnsiConsole.Create(new()
        { Ansi = AnsiSupport.No, ColorSystem = ColorSystemSupport.NoColors, Out = new AnsiConsoleOutput(text) });
        console.Profile.Width = 4_000;
        console.Write(shown);
        return text.ToString();
    }
}
