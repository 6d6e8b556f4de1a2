using NodaTime;

namespace Refettle.Logbook;

/// <summary>Whether something about spells, facilities, climate or the date may be written into a car's log.</summary>
internal static class CalendarCheck
{
    public static IEnumerable<Fault> Of(CarCalendar calendar, Happening happening) => happening switch
    {
        SpellAdded added => OfSpell(calendar, added.Spell),
        SpellRemoved removed => Known("spell", removed.Spell, calendar.Spells.Select(spell => spell.Id)),
        SpellMissed missed => Known("spell", missed.Spell, calendar.Spells.Select(spell => spell.Id)),
        TimeZoneChosen chosen => OfZone(chosen.Zone),
        HandoverSet { Handover: { } date } => OfWords("handover", date.What),
        FacilityAdded added => OfFacility(added.Facility),
        FacilityRemoved removed => Known("facility", removed.Facility, calendar.Facilities.Select(facility => facility.Id)),
        ClimateExpected expected => expected.Months.SelectMany(OfMonth),
        ClimateRead read => OfAir("climate", read.Reading.Celsius, read.Reading.HumidityPercent),
        _ => TaskCheck.Of(calendar, happening),
    };

    public static IEnumerable<Fault> Known(string kind, string id, IEnumerable<string> known)
    {
        var names = known.ToList();
        if (!names.Contains(id))
            yield return new($"{kind} {id}", $"there is no such {kind}",
                NearNames.Ask(id, names, names.Count == 0 ? "There is none yet." : $"Known are {string.Join(", ", names)}."));
    }

    public static IEnumerable<Fault> OfWords(string place, string words)
    {
        if (string.IsNullOrWhiteSpace(words) || words.Length > 200)
            yield return new(place, "it has no name, or one of more than 200 characters", "Say what it is in a few words.");
    }

    public static IEnumerable<Fault> OfIdentifier(string kind, string id)
    {
        if (!Identifier.IsValid(id))
            yield return new(kind, $"\"{id}\" is not an identifier",
                "Use small letters, digits and - _ . beginning with a letter or digit.");
    }

    private static IEnumerable<Fault> OfSpell(CarCalendar calendar, Spell spell)
    {
        var place = $"spell {spell.Id}";
        foreach (var fault in OfIdentifier("spell", spell.Id)
            .Concat(spell.Whose is null ? [] : Known("facility", spell.Whose, calendar.Facilities.Select(facility => facility.Id))))
            yield return fault;
        if (spell.Repeats is not { } again)
            yield break;
        if (again.Interval is < 1 or > 1000)
            yield return new(place, $"it repeats every {again.Interval}", "Give 1 to 1000 days or weeks.");
        if (again.Count is < 1 or > 10_000)
            yield return new(place, $"it repeats {again.Count} times", "Give 1 to 10000, or a last day.");
        if (again.Until < spell.First)
            yield return new(place, $"its last day {again.Until:uuuu-MM-dd} is before its first, {spell.First:uuuu-MM-dd}",
                "Exchange them.");
        if (again.Days.Contains(IsoDayOfWeek.None) || (again.Rhythm == Rhythm.Daily && again.Days.Count > 0))
            yield return new(place, "its days of the week do not fit", "Name days for a weekly spell only.");
    }

    private static IEnumerable<Fault> OfZone(string zone)
    {
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) is null)
            yield return new("time zone", $"\"{zone}\" is not one",
                NearNames.Ask(zone, DateTimeZoneProviders.Tzdb.Ids, "Give a name of the time-zone database, such as Europe/Berlin."));
    }

    private static IEnumerable<Fault> OfFacility(Facility facility)
    {
        foreach (var fault in OfIdentifier("facility", facility.Id).Concat(OfWords($"facility {facility.Id}", facility.Name)))
            yield return fault;
        if (facility.Count is < 1 or > 100)
            yield return new($"facility {facility.Id}", $"there are {facility.Count}", "Give 1 to 100.");
        if (facility.MostPieces is < 1 or > 1_000 || facility.MostSquareMetres is <= 0 or > 1_000)
            yield return new($"facility {facility.Id}", "what fits into it at one time is out of range",
                "Give 1 to 1000 pieces, and more than 0, up to 1000 m².");
        if (facility is { Kind: not FacilityKind.SprayCorner } and ({ MostPieces: not null } or { MostSquareMetres: not null }))
            yield return new($"facility {facility.Id}", "what fits into it is said, and it is no spray corner",
                "Say it of a spray corner only, or take it off: --pieces none --area none.");
        if (facility.Until < facility.From)
            yield return new($"facility {facility.Id}", "its last day is before its first", "Exchange them.");
    }

    private static IEnumerable<Fault> OfMonth(ClimateMonth month)
    {
        if (month.Month is < 1 or > 12)
            yield return new("climate", $"there is no month {month.Month}", "Give 1 to 12.");
        foreach (var fault in OfAir($"climate, month {month.Month}", month.Celsius, month.HumidityPercent))
            yield return fault;
    }

    private static IEnumerable<Fault> OfAir(string place, decimal celsius, decimal humidity)
    {
        if (celsius is < -40 or > 60)
            yield return new(place, $"{celsius} °C", "Give -40 to 60 °C.");
        if (humidity is < 1 or > 100)
            yield return new(place, $"{humidity} % relative humidity", "Give 1 to 100 %.");
    }
}
