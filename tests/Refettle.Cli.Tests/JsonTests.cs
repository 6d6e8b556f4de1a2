using System.Text.Json;
using Refettle.Cli.Verbs;

namespace Refettle.Cli.Tests;

public sealed class JsonTests
{
    /// <summary>One sound call of every verb, in an order that works.</summary>
    private static readonly string[][] _calls =
    [
        ["cars"], ["kits"], ["new", "Second"], ["show"], ["show", "parts"], ["check"], ["add", "tail-lamp", "--side", "left"], ["loose"],
        ["tie"],
        ["set", "part", "rl-clip", "name=Rear left clip", "--new"],
        ["set", "joint", "rl-clip-seat", "kind=clip", "holds=rl-clip,body", "--new"],
        ["mirror", "rl"], ["block", "off(rl-clip)", "--by", "off(rr-clip)"], ["show", "part", "rl-clip"], ["holds", "rl-clip"],
        ["stuck", "rl-clip-seat"],
        ["tried", "rl-clip-seat", "--step", "ease", "--outcome", "held", "--minutes", "4"], ["open-up", "rl-clip-seat", "rr-clip-seat"],
        ["tool-reach", "rl-clip-seat", "ease", "no", "--once", "off(rr-clip)"],
        ["leave", "rl-clip-seat", "ease", "--why", "clips are coming"], ["soak"],
        ["find", "rl-clip"], ["find", "rl-clip", "rounded"],
        ["find", "rl-clip", "--measured", "gap", "--value", "0.4mm", "0.5mm", "--step", "0.1mm"],
        ["limit", "rl-clip", "gap", "--most", "0.6mm", "--whose", "mine"], ["estimate", "rl-clip", "price=4", "lead-days=3"],
        ["verdict"], ["verdict", "rl-clip", "--decide", "replace"], ["baseline"], ["baseline", "shims", "none"], ["reach", "free(rl-clip)"],
        ["why", "off(rr-clip)", "--for", "free(rl-clip)"], ["within", "off(rl-clip)"], ["others", "off(rl-clip)"],
        ["compare", "off(rl-clip)", "--with", "off(rr-clip)"],
        ["settings"], ["settings", "per-hour=40"], ["stance", "on-stands"], ["done", "open(rr-clip-seat)"], ["back", "open(rr-clip-seat)"],
        ["unsound", "body"], ["sound", "body"], ["say", "rl clip cracked, need 2"],
        ["bag", "pack", "14", "two clips", "--for", "part rl-clip"], ["note", "All well", "--about", "part rl-clip"], ["log"],
        ["strike", "last"], ["remove", "part", "rl-clip"], ["export"],
        ["tighten", "rr-clip-seat", "--fitted", "dry"], ["snugged", "rr-clip-seat"], ["torqued", "rr-clip-seat", "--at", "5Nm"],
        ["height", "rl", "382mm"], ["alignment", "found", "--fl", "toe 0.1"],
        ["declare", "claim", "Clips counted"], ["look", "above-axle", "--car", "corner"], ["ready"], ["refit"],
        ["stock", "describe", "s-1", "--name", "Seal", "--shelf-life", "60"], ["stock", "describe", "k-1", "--contains", "s-1=2"],
        ["stock", "assign", "s-1", "joint rr-clip-seat"],
        ["stock", "count", "s-1=3", "--made", "2026-01-31"], ["stock", "count", "k-1"],
        ["stock", "reserve", "s-1=2", "--for", "joint rr-clip-seat"], ["stock", "open", "k-1"],
        ["stock", "fit", "s-1=1", "--on", "joint rr-clip-seat", "--broke", "1"], ["stock", "discard", "s-1"],
        ["stock", "take", "s-1", "--off", "joint rr-clip-seat"],
        ["stock"], ["stock", "s-1"], ["orders", "place", "Harbour Rubber", "s-1=4@3.20", "k-1=1", "--promised", "2099-01-31"],
        ["orders", "promise", "last", "--for", "2099-02-01"],
        ["orders", "arrived", "harbour rubber", "s-1=2"], ["orders", "tried", "harbour rubber", "s-1", "--misfit"],
        ["basket", "off(rr-clip)", "corner:off(wheel)", "--by", "2099-06-01"], ["orders", "return", "last", "s-1"],
        ["orders", "cancel", "last"], ["orders", "send", "Plater", "s-1=2", "part rr-clip", "--work", "zinc", "--photo", "a.jpg"],
        ["orders", "back", "plater", "part rr-clip", "--found", "bright"], ["orders"],
        ["job", "add", "clips", "goals=off(rr-clip)", "worth=10", "work=5 min"], ["job", "set", "clips", "wish=must"], ["job", "list"],
        ["job", "done", "clips"], ["job", "drop", "clips"],
        ["means", "budget=900", "hours=20 h", "by=2027-05-08"], ["means"],
        ["job", "add", "clips", "goals=off(rr-clip)", "worth=100", "work=5 min"], ["scope"], ["scope", "--try", "clips"],
        ["scope", "--frontier", "--points", "3"], ["choose", "clips"],
        ["devices"], ["doctor"],
        ["product", "add", "epoxy", "kind=epoxy-primer", "recoat=16h..7d@20C", "dry=60um", "--by", "me"],
        ["product", "set", "epoxy", "solids=55%", "--by", "me"], ["product", "show", "epoxy"], ["product", "list"],
        ["coating", "system", "chassis", "epoxy*2"], ["coating", "for", "chassis", "rr-clip=0.01m2"],
        ["coating", "bare", "rr-clip", "its foot"], ["coating", "plan"], ["coating", "buy"],
        ["coat", "epoxy", "rr-clip", "--air", "18C", "--humidity", "60%", "--film", "58um", "61um"], ["coating", "due"],
        ["spell", "list"], ["spell", "zone", "Europe/Berlin"],
        ["spell", "add", "evenings", "--on", "tue,thu", "--from", "18:30", "--until", "21:30", "--last", "+6w"],
        ["spell", "miss", "evenings", "thu"], ["spell", "add", "once", "--from", "9:00", "--until", "12:00", "--first", "+3d"],
        ["spell", "remove", "once"], ["meet", "sat+6w", "--what", "meeting"],
        ["facility", "add", "neighbour", "--kind", "helper"], ["facility", "remove", "neighbour"],
        ["climate", "jan=12C/70%", "today=14C/62%"],
        ["task", "add", "polish", "--minutes", "30"], ["task", "takes", "polish", "45"], ["task", "split", "polish", "20", "25"],
        ["task", "fix", "polish", "+8d", "18:30"], ["task", "free", "polish"],
        ["task", "forbid", "polish", "+1d", "+2d"], ["task", "begun", "polish"], ["task", "ahead", "polish"],
        ["timeline", "off(rr-clip)", "--seconds", "0", "--keep"], ["tonight", "off(rr-clip)", "--minutes", "70"],
        ["forecast", "off(rr-clip)", "--futures", "200"],
        ["spent", "42.50", "sanding discs", "--kind", "consumables", "--receipt", "blue folder"], ["ledger", "--entries"],
        ["task", "done", "polish"], ["task", "remove", "polish"],
        ["numbers"], ["numbers", "preload"], ["numbers", "preload", "torque=48Nm", "thread=M10"],
    ];

    private static readonly string[] _fileVerbs = ["backup", "export-log", "import-log", "restore", "sale-file", "verify", "labels"];

    [Fact]
    public void Every_verb_answers_in_json()
    {
        using var bench = new Bench().WithCar();
        foreach (var call in _calls)
        {
            var answer = bench.Json(call);
            Assert.True(bench.Code == ExitCode.Good, $"{string.Join(' ', call)}: {answer}");
            Assert.Equal(JsonValueKind.Object, answer.ValueKind);
        }

        string[] elsewhere = ["sheet", "script", "serve", "demo", "pair", "unpair", .. _fileVerbs];
        Assert.Empty(VerbList.Makers.Keys.Except(_calls.Select(call => call[0])).Except(elsewhere));
    }

    [Fact]
    public void Verbs_that_move_files_answer_in_json()
    {
        using var bench = new Bench().WithCar();
        var (copy, log, page) = (bench.Beside("copy.db"), bench.Beside("log.jsonl"), bench.Beside("sale.html"));
        Assert.Equal(ExitCode.Good, bench.Run("bag", "pack", "14", "two clips"));
        string[][] calls = [["backup", copy], ["export-log", log], ["import-log", log],
            ["restore", copy, "--store", bench.Beside("restored.db")], ["sale-file", "--html", page, "--pdf", bench.Beside("sale.pdf")],
            ["verify", page], ["labels", bench.Beside("labels.pdf"), "--bag", "14"]];
        Assert.Equal(_fileVerbs, calls.Select(call => call[0]));
        foreach (var call in calls)
        {
            var answer = bench.Json(call);
            Assert.True(bench.Code == ExitCode.Good, $"{string.Join(' ', call)}: {answer}");
        }
    }

    [Fact]
    public void A_plan_has_the_documented_shape()
    {
        using var bench = new Bench();
        var plan = bench.Json("reach", "free(damper)", "--sheet", bench.Sheet);
        Assert.Equal("optimal", plan.GetProperty("status").GetString());
        var cost = plan.GetProperty("cost");
        Assert.Equal(cost.GetProperty("total").GetDecimal(),
            new[] { "minutesOpen", "minutesClose", "destroyed", "unique" }.Sum(key => cost.GetProperty(key).GetDecimal()));
        Assert.Equal(cost.GetProperty("total").GetDecimal(), plan.GetProperty("bound").GetDecimal());
        foreach (var step in plan.GetProperty("steps").EnumerateArray())
            Assert.All(new[] { "fact", "way", "tool", "minutesOpen", "minutesClose", "place", "cautions" },
                key => Assert.True(step.TryGetProperty(key, out _), key));
    }

    [Fact]
    public void Faults_come_as_json_too()
    {
        using var bench = new Bench();
        foreach (var words in new string[][] { ["holds", "x"], ["raech"], ["reach"], ["reach", "x", "--sheet", bench.Sheet] })
            Assert.NotEqual(0, bench.Json(words).GetProperty("faults").GetArrayLength());
    }
}
