namespace Refettle.Web.Words;

/// <summary>Where what was entered is: in this browser only, or in the logbook.</summary>
public static class KeptWords
{
    public static string Of(bool isOpening, bool isReached, int entries, int photos) => (isOpening, entries, photos) switch
    {
        (true, _, _) => "Opening …",
        (_, 0, 0) => isReached ? "All in the logbook" : "No connection",
        (_, _, 0) => $"{entries} kept on this device",
        (_, 0, _) => $"{Plain.Some(photos, "photo")} kept on this device",
        _ => $"{entries} and {Plain.Some(photos, "photo")} kept on this device",
    };
}
