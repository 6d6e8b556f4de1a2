namespace Refettle.Logbook;

/// <summary>Whether something may be written into a car's log. What is in the log already is never refused, only not applied;
/// this check keeps mistakes out before they get there.</summary>
public static class HappeningCheck
{
    /// <summary>The longest note, in characters.</summary>
    public const int MaxNote = 10_000;

    /// <summary>All faults; notes among them do not stand in the way.</summary>
    public static ValueList<Fault> Of(CarHistory history, Happening happening) => (happening switch
    {
        CarOpened opened => Opened(opened),
        StructureAdded added => AdditionCheck.Of(history.Car.Structure, added),
        StructureRemoved removed => removed.Things.SelectMany(thing => Named(history.Car.Structure, thing, "removal")),
        StepDone done => WorkCheck.Done(history.Car, done),
        StepReversed reversed => WorkCheck.Reversed(history.Car, reversed),
        StanceTaken taken => WorkCheck.Stance(history.Car, taken.Stance),
        SoundnessJudged judged => Named(history.Car.Structure, $"part {judged.Part}", "soundness"),
        Tried tried => Named(history.Car.Structure, $"joint {tried.Try.Joint}", "try"),
        JointTightened tightened =>
            ClosingCheck.Tightened(tightened).Concat(Named(history.Car.Structure, $"joint {tightened.Joint}", "tightening")),
        HeightMeasured measured => ClosingCheck.Measured(measured),
        AlignmentMeasured measured => ClosingCheck.Measured(measured),
        JobEntered entered => JobCheck.Entered(history.Car, entered.Job),
        JobDropped dropped => JobCheck.Known(history.Car, dropped.Job),
        JobDone done => JobCheck.Done(history.Car, done),
        MeansSet means => JobCheck.Set(history.Car, means.Means),
        ScopeChosen scope => scope.Jobs.SelectMany(job => JobCheck.Known(history.Car, job)),
        BagPacked packed => CaptureCheck.Packed(history.Car, packed),
        BagMoved moved => CaptureCheck.Moved(history.Car, moved),
        BagEmptied emptied => CaptureCheck.Emptied(history.Car, emptied),
        PhotoTaken photo => CaptureCheck.Taken(history, photo.Photo),
        SettingsChosen chosen => Chosen(history.Car.Structure, chosen.Settings),
        MoneySpent spent => MoneyCheck.Spent(history, spent.Receipt, thing => Named(history.Car.Structure, thing, "receipt")),
        Noted noted => Note(history.Car.Structure, noted),
        Declared declared => Declares(history, declared),
        Struck struck => Strike(history, struck),
        NumberAssigned assigned => Named(history.Car.Structure, assigned.Thing, "number").Concat(StockCheck.Of(happening)),
        Reserved reserved => Named(history.Car.Structure, reserved.Thing, "reservation").Concat(StockCheck.Of(happening)),
        PiecesWanted wanted => Named(history.Car.Structure, wanted.Thing, "want").Concat(StockCheck.Of(happening)),
        StockHappening stock => StockCheck.Of(stock),
        _ => CalendarCheck.Of(history.Car.Calendar, happening).Concat(JudgingCheck.Of(history.Car, happening))
            .Concat(CoatingCheck.Of(history.Car, happening)),
    }).Concat(DayCheck.Of(happening)).ToValueList();

    private static IEnumerable<Fault> Opened(CarOpened opened)
    {
        if (string.IsNullOrWhiteSpace(opened.Name))
            yield return new("car", "it has no name", "Give it one.");
        if (opened.Year is < 1885 or > 2100)
            yield return new("car", $"its year is {opened.Year}", "Give a year from 1885 to 2100, or none.");
        if (opened.Currency.Length != 3 || !opened.Currency.All(char.IsAsciiLetterUpper))
            yield return new("car", $"its currency is \"{opened.Currency}\"", "Give the three capital letters of ISO 4217, such as EUR.");
    }

    private static IEnumerable<Fault> Named(Structure structure, string text, string place)
    {
        if (!Thing.TryParse(text, out var thing))
            yield return new(place, $"\"{text}\" is not the name of a thing",
                "Write part x, joint x, state x, space x, sub-assembly x or zone x.");
        else if (Ids(structure, thing.Kind) is var known && !known.Contains(thing.Id))
            yield return new(place, $"the car has no {thing}",
                NearNames.Ask(thing.Id, known, "Look up its identifier in the list of the car."));
    }

    private static HashSet<string> Ids(Structure structure, ThingKind kind) => kind switch
    {
        ThingKind.Part => [.. structure.Parts.Select(part => part.Id)],
        ThingKind.Joint => [.. structure.Joints.Select(joint => joint.Id)],
        ThingKind.State => [.. structure.States.Select(state => state.Id)],
        ThingKind.Space => [.. structure.Spaces.Select(space => space.Id)],
        ThingKind.SubAssembly => [.. structure.SubAssemblies.Select(group => group.Id)],
        _ => [.. structure.Zones.Select(zone => zone.Id)],
    };

    private static IEnumerable<Fault> Chosen(Structure structure, Settings settings)
    {
        if (settings.PerHour.Amount <= 0)
            yield return new("settings perHour", $"an hour of work is worth {settings.PerHour}", "Give more than 0.");
        if (settings.UnknownPrice.Amount < 0)
            yield return new("settings unknownPrice", $"it is {settings.UnknownPrice}", "Give 0 or more.");
        if (settings.PropFrom.Value <= 0)
            yield return new("settings propFrom", $"it is {settings.PropFrom}", "Give more than 0 kg.");
        (string Name, Minutes Value)[] minutes =
        [
            ("uniqueOff", settings.UniqueOff), ("toolChange", settings.ToolChange),
            ("placeChange", settings.PlaceChange), ("postureChange", settings.PostureChange),
        ];
        foreach (var (name, value) in minutes.Where(setting => setting.Value.Value is < 0 or > Minutes.Max))
            yield return new($"settings {name}", $"it is {value.Value} min", $"Give 0 to {Minutes.Max} min.");
        foreach (var fault in settings.Lifted.SelectMany(part => Named(structure, $"part {part}", "settings lifted")))
            yield return fault;
    }

    private static IEnumerable<Fault> Note(Structure structure, Noted noted)
    {
        if (string.IsNullOrWhiteSpace(noted.Text))
            yield return new("note", "it is empty", "Write something.");
        if (noted.Text.Length > MaxNote)
            yield return new("note", $"it has {noted.Text.Length} characters", $"Keep it to {MaxNote}, or make several.");
        foreach (var fault in noted.About is null ? [] : Named(structure, noted.About, "note"))
            yield return fault;
    }

    private static IEnumerable<Fault> Declares(CarHistory history, Declared declared) =>
        Note(history.Car.Structure, new(declared.Text, declared.About))
            .Concat(declared.Because
                .Where(id => history.Line(id) is not { Standing: Standing.InForce, Happening: not (Declared or Struck) })
            .Select(id => new Fault("because", $"entry {id} shows nothing: it is not in force, or states something itself",
                "Take the mark of an entry that tells what was done or found.")));

    private static IEnumerable<Fault> Strike(CarHistory history, Struck struck)
    {
        var target = history.Line(struck.Target);
        if (target is null)
            yield return new("strike", $"this car's log has no entry {struck.Target}", "Take the identifier from the log.");
        else if (target.Standing == Standing.Struck)
            yield return new("strike", $"entry {struck.Target} is struck already", "To restore it, strike the entry that struck it.");
        else if (target.Happening is CarOpened
            && history.Lines.Count(line => line is { Happening: CarOpened, Standing: Standing.InForce }) == 1)
            yield return new("strike", $"entry {struck.Target} is the one that opens the car",
                "Open the car under another name first; the log itself cannot be undone away.");
    }
}
