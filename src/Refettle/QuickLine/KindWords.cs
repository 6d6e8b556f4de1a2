namespace Refettle.QuickLine;

/// <summary>Words by which a line shows what it tells of. Common speech of the trade, from memory.</summary>
internal static class KindWords
{
    public static readonly HashSet<string> Condition = Set(
        "worn rusty rust rusted rotten rot cracked crack leak leaking leaky weep weeping seep seeping torn tear split perished broken bent dented dent missing pitted scored holed hole "
        + "corroded seized sticky stiff loose noisy rumbling rumble rough rattle rattling sagging sag shot gone finished brittle hard soft swollen chafed frayed glazed scratched dull faded "
        + "bubbling blistered sloppy play knocking clicking click notchy dry oily soaked scaly surface crumbling collapsed warped kinked blocked dead faulty intermittent dirty filthy chipped "
        + "chip lifting separated failed failing weak wobbly thin bulging dripping wet green yellow burnt melted ripped overdue low minimum below need order replace replacing stretched oval "
        + "squashed flat blowing whine whining noise stuck damaged bad snap stained eaten hanging squeak squeaking lip through down decayed flaking delaminated swelling misfiring slow");

    /// <summary>Said of a joint that was tried; of a part some of them tell its condition.</summary>
    public static readonly HashSet<string> Trying = Set(
        "soak soaked soaking held moved freed free budge budged turn turned turning spin spinning spun rounded snapped sheared impact heat heated torch flame induction breaker drilled "
        + "popped puller hammer tried loosened cut grinder kicked penetrant joy");

    private static readonly HashSet<string> Stuck = Set("stuck seized tight fast");

    private static readonly HashSet<string> Undoing = Set("undid undone unbolted unscrewed disconnected unplugged opened slackened");

    private static readonly HashSet<string> Removing = Set("off out removed pulled drawn dropped stripped dismantled");

    private static readonly HashSet<string> Fitting = Set("refitted fitted refit installed reinstalled reconnected");

    private static readonly HashSet<string> Fastener =
        Set("bolt nut screw stud clip plug union clamp taper circlip connector rivet spigot pivot banjo clevis locknut");

    private static readonly HashSet<string> Tight = Set("torqued tightened snug snugged nm newton newtonmetre newtonmeter");

    private static readonly HashSet<string> Reminder = Set("note remember buy ask call check sweep todo reminder phone");

    public static bool IsTrying(string word) => Trying.Contains(word);

    public static bool IsStuck(string word) => Stuck.Contains(word);

    public static bool IsUndoing(string word) => Undoing.Contains(word);

    public static bool IsRemoving(string word) => Removing.Contains(word);

    public static bool IsFitting(string word) => Fitting.Contains(word);

    public static bool IsFastener(string word) => Fastener.Contains(word) || word == "bold";

    public static bool IsTight(string word) => Tight.Contains(word);

    public static bool IsReminder(string word) => Reminder.Contains(word);

    public static bool IsAny(string word) =>
        Condition.Contains(word) || IsTrying(word) || IsStuck(word) || IsUndoing(word) || IsRemoving(word) || IsFitting(word)
            || IsTight(word) || IsReminder(word);

    private static HashSet<string> Set(string words) => [.. words.Split(' ').SelectMany(word => new[] { word, LineWords.Stem(word) })];
}
