namespace Refettle.Timeline.Network;

/// <summary>Coats that go on a part one after the other.</summary>
/// <param name="BareMinutes">Bare metal gets its first coat within so many minutes.</param>
/// <param name="CureMinutes">After the last coat until it is fitted.</param>
public sealed record CoatingSystem(string Name, int BareMinutes, ValueList<Coat> Coats, int CureMinutes)
{
    /// <summary>Two-pack epoxy, then two-pack top coat, from figures that circulate in the trade and on two data sheets: bare steel primed within
    /// 8 h; epoxy recoated from 16 h to 7 days at 20 °C, put on at 15 °C or more below 70 % humidity; top coat at 12 °C or more; 48 h until it is
    /// handled. The product's own sheet comes first.</summary>
    public static CoatingSystem EpoxyAndTopCoat { get; } = new(
        "epoxy and top coat", 8 * 60,
        [
            new("epoxy primer", 40, new(15, 70), 16, 7 * 24, 20),
            new("top coat", 40, new(12, 70), 0, null, 20),
        ],
        48 * 60);
}

/// <summary>One coat.</summary>
/// <param name="Minutes">To mask, mix, put on and clean up.</param>
/// <param name="OpensHours">The next coat goes on then or later, at <paramref name="StatedCelsius"/>.</param>
/// <param name="ClosesHours">And until then without abrading; null when it has no end.</param>
public sealed record Coat(string Name, int Minutes, AirNeeds Air, double OpensHours, double? ClosesHours, double StatedCelsius);
