using Refettle.Bench.Verbs;

// One verb a file in Verbs; add a line here.
Dictionary<string, Func<string[], int>> verbs = new()
{
    ["access"] = Access.Run,
    ["check-kits"] = CheckKits.Run,
    ["forecast"] = Forecast.Run,
    ["fuzz"] = Fuzz.Run,
    ["first-schedule"] = FirstScheduleTime.Run,
    ["holds"] = HoldsTime.Run,
    ["kit-times"] = KitTimes.Run,
    ["numbers"] = NumberTimes.Run,
    ["kill-writer"] = KillWriter.Run,
    ["load"] = Load.Run,
    ["open-log"] = OpenLog.Run,
    ["replan"] = ReplanTime.Run,
    ["psplib"] = Psplib.Run,
    ["scope"] = Scope.Run,
    ["sale-file"] = SaleFileTime.Run,
    ["verify"] = SaleFileTime.Verify,
    ["sheet-load"] = SheetLoad.Run,
    ["stuck"] = StuckTimes.Run,
    ["power-loss"] = PowerLoss.Run,
};

if (args.Length > 0 && verbs.TryGetValue(args[0], out var verb))
    return verb(args[1..]);
Console.Error.WriteLine("Verbs: " + string.Join(", ", verbs.Keys.Order(StringComparer.Ordinal)));
return 2;
