using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.SaleFile;
using Refettle.SaleFile.Sealing;
using Refettle.Storage.Keys;

namespace Refettle.Paper.Tests;

/// <summary>A small car with a log, and a key that lives as long as the tests.</summary>
internal sealed class Example : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("refettle-paper-").FullName;

    /// <param name="more">Writes further entries; gives back the identifier of each.</param>
    public Example(int notes = 0, Action<Func<Happening, Guid>>? more = null)
    {
        Key = SealKey.Of(Path.Combine(_folder, "store")).Value;
        History = CarHistory.Of("heron", Written(notes, more));
        Document = SaleFileWriter.Of(new()
        { History = History, Made = DateTimeOffset.UnixEpoch, Fingerprint = Verification.FingerprintOf(Key.PublicKey) }).Value;
    }

    public SealKey Key { get; }

    public CarHistory History { get; }

    public SaleDocument Document { get; set; }

    public IPictureSource Pictures { get; init; } = new NoPictures();

    public SalePaper Paper => new(Document, "heron", History.Car.Structure, Privacy.Standard, Pictures, Key);

    public string File(string name, Action<Stream, SalePaper> write)
    {
        var path = Path.Combine(_folder, name);
        using var file = new FileStream(path, FileMode.Create, FileAccess.ReadWrite);
        write(file, Paper);
        return path;
    }

    public Verification Verify(byte[] file) => Verifier.Of(file, new EcdsaSeal()).Value;

    public void Dispose()
    {
        Key.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    private static List<Entry> Written(int notes, Action<Func<Happening, Guid>>? more)
    {
        var writer = new LogWriter("bench", TimeProvider.System, RandomNumberGenerator.Create());
        List<Entry> entries = [.. writer.Next("heron", LogEnd.Empty, Happenings(notes))];
        more?.Invoke(happening =>
        {
            entries.Add(writer.Next("heron", LogEnd.Of("bench", entries), happening));
            return entries[^1].Id;
        });
        return entries;
    }

    private static IEnumerable<Happening> Happenings(int notes) =>
    [
        new CarOpened("Calder Heron <2.2> & co", 1988, "EUR"),
        new StructureAdded("sheet", Structure, []),
        new Noted("Strap bent “badly” <b>", "part tank"),
        new StepDone(Fact.Open("tank-body"), "spanner", new(12)),
        new StepDone(Fact.Off("tank"), null, null),
        new StepReversed(Fact.Off("tank"), null),
        new StepReversed(Fact.Open("tank-body"), null),
        new JointTightened("tank-body", Tightness.Torqued, new(48.5m), "wrench 20–100", "Sam"),
        new Noted("Sam paid 45 EUR", null),
        .. Enumerable.Range(1, notes)
            .Select(i => new Noted(
                $"Note {i}: washers cleaned, thick ones outside, threads of the strap brushed and oiled before they were put away",
                "part tank")),
    ];

    private static Structure Structure { get; } = new()
    {
        Parts = [new() { Id = "body", Name = "Body shell", Fixed = true },
            new() { Id = "tank", Name = "Fuel tank", Duties = [Duty.Emissions] }],
        Joints =
        [
            new()
            {
                Id = "tank-body", Holds = ["tank", "body"], Name = "Tank strap bolts", Torque = new(48),
                Ways = [new() { Id = "spanner", Tool = "13 mm spanner", Open = new(5), Close = new(6) }],
            },
        ],
    };
}
