namespace Refettle.Web.Rooms;

/// <summary>All rooms that are not under the thumb on every page: one line each.</summary>
public static class RoomList
{
    private const string When = "When is what done?";
    private const string Comes = "What comes off?";
    private const string Worth = "What is worth doing?";
    private const string Stuck = "What will not come loose?";
    private const string Like = "What is it like?";
    private const string Lies = "Where is it?";
    private const string Together = "How does it go back together?";
    private const string Have = "What do I have, what must I order?";
    private const string Buyer = "What does a buyer get?";
    private const string Made = "What is the car made of?";
    private const string Figure = "What does the figure have to be?";
    private const string Cost = "What does it cost?";

    public static ValueList<Room> All { get; } =
    [
        new(When, "Timeline", "Every task by days, and when the car is finished.", "timeline"),
        new(When, "Forecast", "How sure the finish is, what decides it, what would help, what to order by when.", "forecast"),
        new(When, "Tonight", "What can be finished in the time there is now.", "tonight"),
        new(When, "Coating", "Spray sessions, what stays bare, which window is open, what is late.", "coating"),
        new(When, "Spells", "When you are in the garage, and the date to meet.", "spells"),
        new(When, "Facilities", "Helper, lift, spray corner, hired tools, places for the car: what is there when.", "facilities"),
        new(When, "Own tasks", "What you add to the timeline, and what you have set for its tasks.", "tasks"),
        new(Comes, "Other ways", "The next best plans, and what else comes within reach.", "others"),
        new(Worth, "Scope", "Jobs, what each takes given the rest, what fits your days and money.", "scope"),
        new(Worth, "New job", "What you may want done: its worth, its work, what has to be open for it.", "job"),
        new(Stuck, "Stuck joints", "What to try next on a joint that will not open, and which soaks are running.", "stuck"),
        new(Stuck, "Open up or try first", "Whether to open things up before stuck joints are tried.", "open-up"),
        new(Like, "Walk round", "What is found of a part, in a word or as a reading.", "walk"),
        new(Like, "Verdicts", "What to do with each part, with the sums behind it.", "verdicts"),
        new(Like, "Before the first bolt", "What cannot be found out later.", "baseline"),
        new(Lies, "Bags", "What is in which bag, what it belongs to, what is left over.", "bags"),
        new(Lies, "Photos", "All pictures, newest first.", "photos"),
        new(Together, "Close up", "The next thing to put back: how tight, which bag, what the strip remembers.", "close"),
        new(Have, "Shelf", "What is there, what is kept for which place, what is free.", "shelf"),
        new(Have, "Basket", "All that the plans use up, and what to order by when.", "basket"),
        new(Have, "Orders and outside work", "What is to come, what is away since when; check it when it is back.", "orders"),
        new(Buyer, "Sale file", "The record of what was done, sealed and signed, and what you state.", "sale"),
        new(Made, "Add from kits", "An assembly on a side, joined to its neighbours.", "kits"),
        new(Made, "New part", "A part that no kit has.", "edit/part"),
        new(Made, "New joint", "What holds two parts together.", "edit/joint"),
        new(Figure, "Bench numbers", "Threads, torque, coatings, springs, angles.", "/numbers"),
        new(Cost, "Ledger", "Hours and money: planned, spent, still to come; receipts.", "ledger"),
    ];

    /// <summary>The rooms under their questions, in the order of the list.</summary>
    public static IEnumerable<IGrouping<string, Room>> ByQuestion => All.GroupBy(room => room.Question);
}
