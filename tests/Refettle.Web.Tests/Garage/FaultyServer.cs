using System.Net;
using System.Net.Http.Json;
using Refettle.Logbook;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

/// <summary>A server's log behind a bad network: a request, or only its answer, can be lost.</summary>
internal sealed class FaultyServer : HttpMessageHandler
{
    private readonly List<Entry> _entries = [];

    public enum Fate
    {
        Arrives,
        RequestLost,
        AnswerLost,
        Refused,
    }

    /// <summary>What happens to the next requests; asked once for each.</summary>
    public Func<Fate> Next { get; set; } = () => Fate.Arrives;

    /// <summary>It works nothing out: requests for a timeline are lost.</summary>
    public bool KeepsLogsOnly { get; init; }

    /// <summary>What it calls the devices that wrote entries.</summary>
    public DeviceNames Names { get; set; } = DeviceNames.None;

    /// <summary>No request goes on before this is over.</summary>
    public Task Held { get; set; } = Task.CompletedTask;

    public IReadOnlyList<Entry> Entries => _entries;

    public ServerApi Api => new(new HttpClient(this, disposeHandler: false) { BaseAddress = new("http://garage/") });

    /// <summary>The log is gone, as after a lost disk.</summary>
    public void Forget() => _entries.Clear();

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        await Held;
        var fate = Next();
        if (fate == Fate.RequestLost || (KeepsLogsOnly && request.RequestUri!.AbsolutePath.EndsWith("/timeline", StringComparison.Ordinal)))
            throw new HttpRequestException("lost");
        if (fate == Fate.Refused)
            return Answer(HttpStatusCode.UnprocessableEntity,
                new Problem("Refused", "See the faults.", [new("entry", "it is refused", "Try another.")]));
        object answer = request.RequestUri!.AbsolutePath == "/api/cars"
            ? Cars()
            : request.RequestUri!.AbsolutePath == "/api/writers"
            ? Names
            : request.Method == HttpMethod.Get
            ? Page(request.RequestUri!)
            : Take(await request.Content!.ReadFromJsonAsync<ValueList<Entry>>(ExchangeJson.Options, cancellationToken));
        return fate == Fate.AnswerLost ? throw new HttpRequestException("lost") : Answer(HttpStatusCode.OK, answer);
    }

    private EntryPage Page(Uri address)
    {
        var after = int.Parse(address.Query.Split('=')[1]);
        return new(_entries.Skip(after).Where(entry => address.Segments[3] == entry.Car + "/").ToValueList(), _entries.Count);
    }

    private ValueList<ShelfCar> Cars() =>
        _entries.Select(entry => entry.Car).Distinct().Select(car => new ShelfCar(car, car, 0)).ToValueList();

    private EntriesKept Take(ValueList<Entry>? sent)
    {
        var fresh = sent!.Where(entry => _entries.All(known => known.Id != entry.Id)).ToArray();
        _entries.AddRange(fresh);
        return new(fresh.Length);
    }

    private static HttpResponseMessage Answer(HttpStatusCode status, object body) =>
        new(status) { Content = JsonContent.Create(body, body.GetType(), options: ExchangeJson.Options) };
}
