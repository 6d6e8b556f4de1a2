namespace Refettle.Logbook;

/// <summary>What an entry tells. Each has a word (its kind) and a version in <see cref="Happenings"/>.</summary>
public abstract record Happening;

/// <summary>A car begins. <c>car-opened</c></summary>
public sealed record CarOpened(string Name, int? Year, string Currency) : Happening;

/// <summary>Structure arrives from a sheet, a kit or a hand; what has the same identifier is replaced. <c>structure-added</c></summary>
/// <param name="Source">Where it came from, in words: <c>kit drum-brake-corner rl</c>, <c>sheet heron.yaml</c>, <c>edit</c>.</param>
/// <param name="Added">Also the loose ends that are left.</param>
/// <param name="Tied">Loose ends, as <c>kit/hole</c>, that this addition closes.</param>
public sealed record StructureAdded(string Source, Structure Added, ValueList<string> Tied) : Happening;

/// <summary>Things are taken out of the description, each as <c>part x</c>, <c>joint x</c>, <c>state x</c>, <c>space x</c>, <c>sub-assembly
/// x</c>. <c>structure-removed</c></summary>
public sealed record StructureRemoved(ValueList<string> Things) : Happening;

/// <summary>A step was done. <c>step-done</c></summary>
/// <param name="Way">The way it was done; null when not said.</param>
/// <param name="Took">Minutes it took; null when not timed.</param>
public sealed record StepDone(Fact Fact, string? Way, Minutes? Took) : Happening;

/// <summary>A step was taken back on the car: fitted, closed, refilled. <c>step-reversed</c></summary>
public sealed record StepReversed(Fact Fact, Minutes? Took) : Happening;

/// <summary>A joint was tried. <c>tried</c></summary>
public sealed record Tried(Try Try) : Happening;

/// <summary>The car was put into a stance. <c>stance-taken</c></summary>
public sealed record StanceTaken(string Stance) : Happening;

/// <summary>A part was found too weak to carry the car, or sound after all. <c>soundness-judged</c></summary>
public sealed record SoundnessJudged(string Part, bool Sound) : Happening;

/// <summary>A joint was closed and tightened. <c>joint-tightened</c></summary>
/// <param name="Torque">Reading or setting; null when snug or not said.</param>
/// <param name="Instrument">The wrench; null when not said.</param>
/// <param name="By">Who; null when not said.</param>
public sealed record JointTightened(string Joint, Tightness How, NewtonMetres? Torque, string? Instrument, string? By) : Happening
{
    /// <summary>How it was looked at once more; null when nobody said so.</summary>
    public ValueList<TighteningCheck>? Checks { get; init; }
}

/// <summary>The height of a corner on its wheels, hub centre to wheel arch. <c>height-measured</c></summary>
/// <param name="Corner">fl, fr, rl or rr.</param>
public sealed record HeightMeasured(string Corner, Millimetres Height) : Happening;

/// <summary>The owner's settings, whole. <c>settings-chosen</c></summary>
public sealed record SettingsChosen(Settings Settings) : Happening;

/// <summary>A line in words, about a thing (<c>part x</c>) or the whole car (null). <c>noted</c></summary>
public sealed record Noted(string Text, string? About) : Happening;

/// <summary>An earlier entry no longer counts. Striking a strike restores it. <c>struck</c></summary>
public sealed record Struck(Guid Target, string? Why) : Happening;
