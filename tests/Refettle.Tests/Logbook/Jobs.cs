namespace Refettle.Tests.Logbook;

/// <summary>Jobs on the small car.</summary>
internal static class Jobs
{
    public static Job Tank { get; } = new()
    {
        Id = "tank",
        Name = "Coat the floor above the tank",
        Wish = Wish.Want,
        Goals = [Fact.Reach("floor")],
        Worth = new(100, 250, 400, WorthUnit.Money, Origin.User),
        Work = new(90),
        Parts = new(35.5m),
        Waits = [new(WaitKind.Cure, "two coats", 1.5m, 3, Origin.CommonPractice)],
    };
}
