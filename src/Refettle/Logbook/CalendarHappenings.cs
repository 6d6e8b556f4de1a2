using NodaTime;

namespace Refettle.Logbook;

/// <summary>A spell is added; one with the same identifier is replaced. <c>spell-added</c></summary>
public sealed record SpellAdded(Spell Spell) : Happening;

/// <summary>A spell is taken out altogether. <c>spell-removed</c></summary>
public sealed record SpellRemoved(string Spell) : Happening;

/// <summary>A spell does not take place on one day. <c>spell-missed</c></summary>
public sealed record SpellMissed(string Spell, LocalDate Day) : Happening;

/// <summary>Where the clock on the wall hangs, as a name of the time-zone database. <c>time-zone-chosen</c></summary>
public sealed record TimeZoneChosen(string Zone) : Happening;

/// <summary>The date to meet, or none any more. <c>handover-set</c></summary>
public sealed record HandoverSet(Handover? Handover) : Happening;

/// <summary>A helper, lift, bench, spray corner or tool is there; one with the same identifier is replaced. <c>facility-added</c></summary>
public sealed record FacilityAdded(Facility Facility) : Happening;

/// <summary>A facility is there no more, nor are its spells. <c>facility-removed</c></summary>
public sealed record FacilityRemoved(string Facility) : Happening;

/// <summary>The air to expect in some months; other months stay as they were. <c>climate-expected</c></summary>
public sealed record ClimateExpected(ValueList<ClimateMonth> Months) : Happening;

/// <summary>The air of a day, read off the instruments. <c>climate-read</c></summary>
public sealed record ClimateRead(ClimateReading Reading) : Happening;
