using System.CommandLine;
using Refettle.Cli.Verbs.Coating;
using Refettle.Cli.Verbs.Stock;
using Refettle.Cli.Verbs.Timeline;

namespace Refettle.Cli.Verbs;

/// <summary>Every verb, by what it is for, in the order of the help and of docs/cli.md.</summary>
internal static class VerbList
{
    public static IReadOnlyList<VerbGroup> Groups { get; } =
    [
        new("Ask", new()
        {
            ["reach"] = ReachVerb.Make,
            ["holds"] = HoldsVerb.Make,
            ["stuck"] = StuckVerb.Make,
            ["open-up"] = OpenUpVerb.Make,
            ["verdict"] = VerdictVerb.Make,
            ["why"] = WhyVerb.Make,
            ["within"] = WithinVerb.Make,
            ["others"] = OthersVerb.Make,
            ["compare"] = CompareVerb.Make,
        }),
        new("Choose what is worth doing", new()
        {
            ["job"] = JobVerb.Make,
            ["scope"] = ScopeVerb.Make,
            ["choose"] = ChooseVerb.Make,
            ["means"] = MeansVerb.Make,
        }),
        new("Plan the time", new()
        {
            ["timeline"] = TimelineVerb.Make,
            ["forecast"] = ForecastVerb.Make,
            ["tonight"] = TonightVerb.Make,
            ["coating"] = CoatingVerb.Make,
            ["product"] = ProductVerb.Make,
            ["coat"] = CoatVerb.Make,
            ["spell"] = SpellVerb.Make,
            ["meet"] = MeetVerb.Make,
            ["facility"] = FacilityVerb.Make,
            ["climate"] = ClimateVerb.Make,
            ["task"] = TaskVerb.Make,
        }),
        new("Record", new()
        {
            ["done"] = DoneVerb.Make,
            ["tried"] = TriedVerb.Make,
            ["baseline"] = BaselineVerb.Make,
            ["find"] = FindVerb.Make,
            ["limit"] = LimitVerb.Make,
            ["estimate"] = EstimateVerb.Make,
            ["soak"] = SoakVerb.Make,
            ["tool-reach"] = ToolReachVerb.Reach,
            ["leave"] = ToolReachVerb.Leave,
            ["back"] = BackVerb.Make,
            ["stance"] = StanceVerb.Make,
            ["sound"] = SoundVerb.Sound,
            ["unsound"] = SoundVerb.Unsound,
            ["say"] = SayVerb.Make,
            ["bag"] = BagVerb.Make,
            ["spent"] = SpentVerb.Make,
            ["ledger"] = LedgerVerb.Make,
            ["note"] = NoteVerb.Make,
            ["log"] = LogVerb.Make,
            ["strike"] = StrikeVerb.Make,
        }),
        new("Close up", new()
        {
            ["tighten"] = TightenVerb.Make,
            ["snugged"] = TightenedVerb.Snugged,
            ["torqued"] = TightenedVerb.Torqued,
            ["alignment"] = AlignmentVerb.Make,
            ["height"] = HeightVerb.Make,
            ["look"] = LookVerb.Make,
            ["refit"] = RefitVerb.Make,
            ["ready"] = ReadyVerb.Make,
        }),
        new("Stock", new()
        {
            ["stock"] = StockVerb.Make,
            ["basket"] = BasketVerb.Make,
            ["orders"] = OrdersVerb.Make,
        }),
        new("Describe", new()
        {
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
            ["settings"] = SettingsVerb.Make,
        }),
        new("Give away", new()
        {
            ["declare"] = DeclareVerb.Make,
            ["sale-file"] = SaleFileVerb.Make,
            ["labels"] = LabelsVerb.Make,
            ["verify"] = VerifyVerb.Make,
        }),
        new("Keep", new()
        {
            ["backup"] = BackupVerbs.Backup,
            ["restore"] = BackupVerbs.Restore,
            ["export-log"] = LogFileVerbs.Export,
            ["import-log"] = LogFileVerbs.Import,
        }),
        new("Work out", new()
        {
            ["numbers"] = NumbersVerb.Make,
        }),
        new("Run", new()
        {
            ["script"] = ScriptVerb.Make,
            ["demo"] = DemoVerb.Make,
            ["serve"] = ServeVerb.Make,
            ["pair"] = DeviceVerbs.Pair,
            ["devices"] = DeviceVerbs.List,
            ["unpair"] = DeviceVerbs.Unpair,
            ["doctor"] = DoctorVerb.Make,
        }),
    ];

    public static IReadOnlyDictionary<string, Func<Desk, Command>> Makers { get; } =
        Groups.SelectMany(group => group.Makers).ToDictionary();
}

/// <param name="Purpose">What its verbs are for, in a word or a few.</param>
internal sealed record VerbGroup(string Purpose, OrderedDictionary<string, Func<Desk, Command>> Makers);
