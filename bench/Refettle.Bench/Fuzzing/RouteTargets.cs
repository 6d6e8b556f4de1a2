using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Refettle.Access;
using Refettle.Access.Derivation;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Server;
using Refettle.Solvers;
using Refettle.Storage;
using Refettle.Web.Garage;

namespace Refettle.Bench.Fuzzing;

/// <summary>Bodies sent to a running server: whatever comes in, it answers, and never with a mistake of its own.</summary>
internal sealed class RouteTargets : IDisposable
{
    private const string Car = "heron";
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("refettle-fuzz-server-");
    private readonly LogbookStore _logbook;
    private readonly Microsoft.AspNetCore.Builder.WebApplication _server;
    private readonly HttpClient _http;

    public RouteTargets(Structure structure, ValueList<Entry> entries)
    {
        _logbook = LogbookStore.Open(Path.Combine(_folder.FullName, "store"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        _logbook.Write(Car, [new CarOpened("Heron", 1988, "EUR"), new StructureAdded("kit start", structure, [])]);
        var solver = new MixedIntegerSolver();
        _server = RefettleHost.Build(new()
        {
            Logbook = _logbook,
            Planner = new AccessPlanner(new ReducedSolver(solver)),
            Scoper = new ScopePlanner(new ReducedSolver(solver), solver),
            Photos = PhotoStore.Beside(_logbook.Path),
        });
        _server.StartAsync().GetAwaiter().GetResult();
        _http = new() { BaseAddress = new(_server.Urls.First()) };
        _http.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        All = [.. Questions(), new("route entries", 40, Route("entries", entries.Select(entry => new[] { entry }).ToArray<object>())),
            new("route photos", 40, Piece)];
    }

    public IReadOnlyList<Target> All { get; }

    public void Dispose()
    {
        _http.Dispose();
        _server.StopAsync().GetAwaiter().GetResult();
        ((IDisposable)_server).Dispose();
        _logbook.Dispose();
        _folder.Delete(recursive: true);
    }

    private IEnumerable<Target> Questions()
    {
        var question = Question.For(Fact.Off("body"));
        var scope = new ScopeQuestion { PerHour = new(30), Budget = new(500), Hours = new(600) };
        (string Verb, object Body)[] asked =
        [
            ("reach", question), ("within", question), ("others", question),
            ("compare", new Pair(question.Goals, [Fact.State("battery-off")])),
            ("timeline", new TimelineAsked(question.Goals, 0)), ("forecast", new ForecastAsked(question.Goals, 0.8)),
            ("open-up", new OpenUpAsked(["body-clip"])), ("verdicts", new VerdictAsked(["body"], question.Goals, 40)),
            ("scope", scope), ("scope/frontier", new FrontierQuestion(scope, ScopeLimit.Time, 3)),
            ("scope/add", new BrakeQuestion(scope, "coat", [])),
        ];
        return asked.Select(one => new Target($"route {one.Verb}", 10, Route(one.Verb, [one.Body])));
    }

    private Func<Mutator, Trial> Route(string verb, object[] bodies)
    {
        var seeds = bodies.Select(body => JsonSerializer.Serialize(body, body.GetType(), ExchangeJson.Options)).ToList();
        return mutator =>
        {
            var body = Encoding.UTF8.GetBytes(mutator.Change(mutator.Pick(seeds), mutator.Pick(seeds)));
            return new(body, () => Send(HttpMethod.Post, $"api/cars/{Car}/{verb}", body, "application/json"));
        };
    }

    /// <summary>Pieces of pictures with names and places that do not fit.</summary>
    private Trial Piece(Mutator mutator)
    {
        byte[] body = mutator.Change([0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 1, 2, 0xFF, 0xD9]);
        var name = mutator.Toss(0.5) ? Convert.ToHexStringLower(SHA256.HashData(body)) : mutator.Change(new string('a', 64), "../%2e%2f");
        var (from, of) = (mutator.Pick<long>([0, 0, 0, 1, -1, long.MaxValue, body.Length]),
            mutator.Pick<long>([body.Length, body.Length, 0, -1, long.MaxValue, long.MinValue]));
        return new(body,
            () => Send(HttpMethod.Put, $"api/photos/{Uri.EscapeDataString(name)}?from={from}&of={of}", body, "application/octet-stream"));
    }

    private void Send(HttpMethod method, string path, byte[] body, string type)
    {
        using var request = new HttpRequestMessage(method, path)
        { Content = new ByteArrayContent(body) { Headers = { ContentType = new MediaTypeHeaderValue(type) } } };
        using var answer = _http.Send(request);
        if ((int)answer.StatusCode >= 500)
            throw new UnsoundAnswerException($"{path} answered {(int)answer.StatusCode}");
    }
}
