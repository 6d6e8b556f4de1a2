using System.CommandLine;

namespace Refettle.Cli.Verbs;

/// <summary>Every verb, in the order of the help.</summary>
internal static class VerbList
{
    public static IReadOnlyDictionary<string, Func<Desk, Command>> Makers { get; } = new Dictionary<string, Func<Desk, Command>>
    {
        ["reach"] = ReachVerb.Make,
        ["holds"] = HoldsVerb.Make,
        ["stuck"] = StuckVerb.Make,
        ["tried"] = TriedVerb.Make,
        ["why"] = WhyVerb.Make,
        ["within"] = WithinVerb.Make,
        ["others"] = OthersVerb.Make,
        ["compare"] = CompareVerb.Make,
        ["job"] = JobVerb.Make,
        ["means"] = MeansVerb.Make,
        ["done"] = DoneVerb.Make,
        ["back"] = BackVerb.Make,
        ["stance"] = StanceVerb.Make,
        ["sound"] = SoundVerb.Sound,
        ["unsound"] = SoundVerb.Unsound,
        ["note"] = NoteVerb.Make,
        ["log"] = LogVerb.Make,
        ["strike"] = StrikeVerb.Make,
        ["tighten"] = TightenVerb.Make,
        ["snugged"] = TightenedVerb.Snugged,
        ["torqued"] = TightenedVerb.Torqued,
        ["height"] = HeightVerb.Make,
        ["look"] = LookVerb.Make,
        ["ready"] = ReadyVerb.Make,
        ["new"] = NewVerb.Make,
        ["cars"] = CarsVerb.Make,
        ["show"] = ShowVerb.Make,
        ["kits"] = KitsVerb.Make,
        ["add"] = AddVerb.Make,
        ["loose"] = LooseVerb.Make,
        ["tie"] = TieVerb.Make,
        ["mirror"] = MirrorVerb.Make,
        ["set"] = SetVerb.Make,
        ["block"] = BlockVerb.Make,
        ["remove"] = RemoveVerb.Make,
        ["sheet"] = SheetVerb.Make,
        ["export"] = ExportVerb.Make,
        ["check"] = CheckVerb.Make,
        ["backup"] = BackupVerbs.Backup,
        ["restore"] = BackupVerbs.Restore,
        ["export-log"] = LogFileVerbs.Export,
        ["import-log"] = LogFileVerbs.Import,
        ["settings"] = SettingsVerb.Make,
        ["numbers"] = NumbersVerb.Make,
        ["script"] = ScriptVerb.Make,
        ["serve"] = ServeVerb.Make,
        ["demo"] = DemoVerb.Make,
    };
}
