using NodaTime;
using Refettle.Coating;
using Refettle.Logbook;
using Refettle.Tests.Logbook;

namespace Refettle.Tests.Coating;

/// <summary>Invented products on a small car. Epoxy: the window that two data sheets give for 20 and 30 °C (docs/coating.md).</summary>
internal static class Coatings
{
    /// <summary>A Monday.</summary>
    public static LocalDateTime Monday { get; } = new(2027, 3, 1, 8, 0);

    public static CoatingProduct Epoxy { get; } = new()
    {
        Id = "epoxy",
        Name = "Epoxy",
        Kind = CoatingKind.EpoxyPrimer,
        Sheet = "invented",
        WhenLate = "abrade with 320 and clean",
        Hazards = [CoatingHazard.EpoxyResin],
        Recoat = [new(20, 16, 168, false, Origin.Maker), new(30, 10, 72, false, Origin.Maker)],
        Figures = [new(FigureKind.LeastAir, 10, Origin.Maker), new(FigureKind.MostHumidity, 80, Origin.Maker),
            new(FigureKind.DryFilm, 80, Origin.Maker), new(FigureKind.Solids, 55, Origin.Maker), new(FigureKind.Loss, 40, Origin.User)],
    };

    public static CoatingProduct Top { get; } = new() { Id = "top", Name = "Top coat", Kind = CoatingKind.TopCoat };

    public static Happening[] Described { get; } =
    [
        new ProductDescribed(Epoxy), new ProductDescribed(Top),
        new CoatingSystemDescribed(new("chassis", "Chassis", [new("epoxy"), new("top", 2)])),
        new CoatingChosen("chassis", [new("axle", 1.5m), new("tank", 2)]),
    ];

    public static Car Car(params Happening[] more) => SmallCar.After([.. Described, .. more]).Car;

    public static CoatingPlan Plan(Car car, LocalDateTime? from = null)
    {
        var question = new CoatingQuestion(car, from ?? Monday, 30);
        var plan = CoatingPlanner.Plan(question).Value;
        Assert.Empty(CoatingPlanCheck.Of(question, plan));
        return plan;
    }
}
