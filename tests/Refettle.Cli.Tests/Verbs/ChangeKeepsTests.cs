using System.Text.Json;

namespace Refettle.Cli.Tests.Verbs;

/// <summary>What is entered again keeps what is not said, or is refused: nothing is lost without a word.</summary>
public sealed class ChangeKeepsTests
{
    [Fact]
    public void A_facility_keeps_what_is_not_said_and_none_takes_it_off()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "facility", "add", "corner", "--kind", "spray-corner", "--name", "Paint tent", "--pieces", "6", "--area", "4m2",
            "--first", "2027-03-01");
        Does(bench, "facility", "add", "corner", "--last", "2027-03-09");
        Does(bench, "facility", "add", "corner", "--area", "none");
        var corner = Assert.Single(Calendar(bench, "facilities"));
        Assert.Equal(("Paint tent", 6, "2027-03-01", "2027-03-09"),
            (Word(corner, "name"), corner.GetProperty("mostPieces").GetInt32(), Word(corner, "from"), Word(corner, "until")));
        Assert.False(corner.TryGetProperty("mostSquareMetres", out var area) && area.ValueKind != JsonValueKind.Null);
        Refuses(bench, "nothing is known of lift yet", "facility", "add", "lift");
        Refuses(bench, "take it off: --pieces none", "facility", "add", "corner", "--kind", "bench");
    }

    [Fact]
    public void A_spell_keeps_whose_it_is_its_days_and_those_it_misses()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "facility", "add", "neighbour", "--kind", "helper");
        Does(bench, "spell", "add", "his", "--on", "tue,thu", "--from", "18:00", "--until", "20:00", "--first", "2027-03-02", "--last",
            "2027-05-01", "--every", "2", "--whose", "neighbour");
        Does(bench, "spell", "miss", "his", "2027-03-04");
        Does(bench, "spell", "add", "his", "--until", "21:00");
        Assert.Contains("neighbour: Tue, Thu every 2 weeks 18:00–21:00 from Tue 2027-03-02 until Sat 2027-05-01, not on Thu 2027-03-04",
            Flat(bench.Out("spell", "list")), StringComparison.Ordinal);
        Does(bench, "spell", "add", "his", "--whose", "me", "--on", "sat", "--every", "1", "--last", "none");
        Assert.Contains("his Sat 18:00–21:00 from Tue 2027-03-02, not on", Flat(bench.Out("spell", "list")), StringComparison.Ordinal);
        Does(bench, "spell", "add", "his", "--on", "once");
        Assert.Contains("his Tue 2027-03-02 18:00–21:00", Flat(bench.Out("spell", "list")), StringComparison.Ordinal);
        Refuses(bench, "there is no spell of that name yet", "spell", "add", "evenings", "--from", "18:00");
    }

    [Fact]
    public void A_date_that_is_moved_keeps_its_time_and_words()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "meet", "2027-04-10", "--at", "14:30", "--what", "show");
        Assert.Contains("Sat 2027-04-17 14:30, show", bench.Out("meet", "2027-04-17"), StringComparison.Ordinal);
        Does(bench, "meet", "none");
        Assert.Contains("09:00, hand-over", bench.Out("meet", "2027-04-17"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_task_keeps_what_is_not_said()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "facility", "add", "yard", "--kind", "place");
        Does(bench, "task", "add", "wash", "--minutes", "30", "--name", "Wash it", "--after", "strip.axle", "--uses", "yard", "--unbroken");
        Does(bench, "task", "add", "wash", "--minutes", "45");
        var task = Assert.Single(Calendar(bench, "tasks"));
        Assert.Equal(("Wash it", true, 1, 1),
            (Word(task, "name"), task.GetProperty("isUnbroken").GetBoolean(), task.GetProperty("after").GetArrayLength(),
                task.GetProperty("uses").GetArrayLength()));
        Does(bench, "task", "add", "wash", "--uses", "--unbroken", "false");
        task = Assert.Single(Calendar(bench, "tasks"));
        Assert.Equal((false, 1, 0),
            (task.GetProperty("isUnbroken").GetBoolean(), task.GetProperty("after").GetArrayLength(),
                task.GetProperty("uses").GetArrayLength()));
        Does(bench, "task", "uses", "job.floor", "yard");
        Assert.Contains("wash task: Wash it, 45 min, after strip.axle job.floor set: also needs yard", Flat(bench.Out("spell", "list")),
            StringComparison.Ordinal);
        Refuses(bench, "nothing is known of polish yet", "task", "add", "polish");
    }

    /// <summary>Another verdict has reasons of its own.</summary>
    [Fact]
    public void A_verdict_given_again_keeps_its_reason_and_another_does_not()
    {
        using var bench = new Bench().WithCar();
        JsonElement Own() => Assert.Single(bench.Json("verdict", "axle").GetProperty("verdicts").EnumerateArray()).GetProperty("own");
        Does(bench, "verdict", "axle", "--decide", "refurbish", "--why", "bent");
        Does(bench, "verdict", "axle", "--decide", "refurbish", "--outside");
        Does(bench, "verdict", "axle", "--decide", "refurbish");
        Assert.Equal(("bent", "outside-shop"), (Word(Own(), "why"), Word(Own(), "by")));
        Does(bench, "verdict", "axle", "--decide", "keep");
        Assert.False(Own().TryGetProperty("why", out var why) && why.ValueKind != JsonValueKind.Null);
        Assert.Equal("self", Word(Own(), "by"));
    }

    [Fact]
    public void A_limit_keeps_its_other_end_of_the_same_word_and_mixes_no_two()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "limit", "axle", "play", "--least", "0.1mm", "--whose", "maker", "--source", "page 3");
        Assert.Contains("play 0.1 to 0.5 mm", bench.Out("limit", "axle", "play", "--most", "0.5mm", "--whose", "maker"),
            StringComparison.Ordinal);
        Refuses(bench, "it would be lost", "limit", "axle", "play", "--most", "0.7mm", "--whose", "mine");
        Assert.Contains("play 0.2 to 0.7 mm", bench.Out("limit", "axle", "play", "--least", "0.2mm", "--most", "0.7mm", "--whose", "mine"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_keeps_how_many_of_it_go_onto_a_thing()
    {
        using var bench = new Bench().WithCar();
        Does(bench, "stock", "assign", "4410-22", "part axle", "--count", "8");
        Assert.Contains("8", bench.Out("stock", "assign", "4410-22", "part axle"), StringComparison.Ordinal);
    }

    private static void Does(Bench bench, params string[] words) => Assert.True(bench.Run(words) == ExitCode.Good, bench.Error);

    private static void Refuses(Bench bench, string why, params string[] words)
    {
        Assert.Equal(ExitCode.Faults, bench.Run(words));
        Assert.Contains(why, Flat(bench.Error), StringComparison.Ordinal);
    }

    private static JsonElement.ArrayEnumerator Calendar(Bench bench, string list) =>
        bench.Json("spell", "list").GetProperty("calendar").GetProperty(list).EnumerateArray();

    private static string? Word(JsonElement thing, string key) => thing.GetProperty(key).GetString();

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
