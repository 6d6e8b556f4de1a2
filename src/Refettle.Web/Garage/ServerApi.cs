using System.Net.Http.Json;
using System.Text.Json;
using Refettle.Access;
using Refettle.Discovery;
using Refettle.Forecast.OfCar;
using Refettle.Judging;
using Refettle.Logbook;
using Refettle.Scope;
using Refettle.Stuck;
using Refettle.Stuck.OpenUp;

namespace Refettle.Web.Garage;

/// <summary>The server's side of the pages.</summary>
public sealed class ServerApi(HttpClient http, TimeProvider? clock = null)
{
    /// <summary>A form on another site cannot send this header, so what carries it was sent by these pages.</summary>
    public const string OwnHeader = "X-Refettle";

    /// <summary>By how much this device's clock is ahead of the server's, to a second or two; null while that is not known.</summary>
    public TimeSpan? Ahead { get; private set; }

    public Task<Reply<ValueList<ShelfCar>>> CarsAsync() => GetAsync<ValueList<ShelfCar>>("api/cars");

    public Task<Reply<EntryPage>> EntriesAsync(string car, long after) =>
        GetAsync<EntryPage>($"api/cars/{car}/entries?after={after}");

    public Task<Reply<EntriesKept>> SendAsync(string car, ValueList<Entry> entries) =>
        PostAsync<EntriesKept>($"api/cars/{car}/entries", entries);

    public Task<Reply<PhotoArrived>> PhotoProgressAsync(string hash) => GetAsync<PhotoArrived>($"api/photos/{hash}/progress");

    public Task<Reply<DeviceNames>> NamesAsync() => GetAsync<DeviceNames>("api/writers");

    /// <summary>Sends a piece of a picture; doing it twice does no harm.</summary>
    public Task<Reply<PhotoArrived>> SendPhotoAsync(string hash, long from, long of, byte[] piece)
    {
        var request = new HttpRequestMessage(HttpMethod.Put, $"api/photos/{hash}?from={from}&of={of}")
        { Content = new ByteArrayContent(piece) };
        request.Content.Headers.ContentType = new("application/octet-stream");
        request.Headers.Add(OwnHeader, "1");
        return AskAsync<PhotoArrived>(request);
    }

    public Task<Reply<KitTable>> KitsAsync() => GetAsync<KitTable>("api/kits");

    public Task<Reply<LadderSet>> LaddersAsync() => GetAsync<LadderSet>("api/ladders");

    public Task<Reply<OpenUpReport>> OpenUpAsync(string car, OpenUpAsked asked) =>
        PostAsync<OpenUpReport>($"api/cars/{car}/open-up", asked);

    public Task<Reply<ValueList<VerdictAnswer>>> VerdictsAsync(string car, VerdictAsked asked) =>
        PostAsync<ValueList<VerdictAnswer>>($"api/cars/{car}/verdicts", asked);

    public Task<Reply<Plan>> ReachAsync(string car, Question question) => PostAsync<Plan>($"api/cars/{car}/reach", question);

    public Task<Reply<WithinAnswer>> WithinAsync(string car, Question question) =>
        PostAsync<WithinAnswer>($"api/cars/{car}/within", question);

    public Task<Reply<ValueList<OtherPlan>>> OthersAsync(string car, Question question) =>
        PostAsync<ValueList<OtherPlan>>($"api/cars/{car}/others", question);

    public Task<Reply<TimelineShown>> TimelineAsync(string car, TimelineAsked asked) =>
        PostAsync<TimelineShown>($"api/cars/{car}/timeline", asked);

    public Task<Reply<ScopeAnswer>> ScopeAsync(string car, ScopeQuestion question) =>
        PostAsync<ScopeAnswer>($"api/cars/{car}/scope", question);

    /// <summary>The plan is not needed for it, and not sent.</summary>
    public Task<Reply<ScopeReasons>> ScopeReasonsAsync(string car, ScopeAnswer answer) =>
        PostAsync<ScopeReasons>($"api/cars/{car}/scope/reasons", answer with { Plan = null });

    public Task<Reply<ValueList<FrontierPoint>>> FrontierAsync(string car, FrontierQuestion question) =>
        PostAsync<ValueList<FrontierPoint>>($"api/cars/{car}/scope/frontier", question);

    public Task<Reply<Brake>> BrakeAsync(string car, BrakeQuestion question) => PostAsync<Brake>($"api/cars/{car}/scope/add", question);

    public Task<Reply<SinceOpenAnswer>> SinceOpenAsync(string car, SinceOpenAsked asked) =>
        PostAsync<SinceOpenAnswer>($"api/cars/{car}/since-open", asked);

    public Task<Reply<OutlookDifference>> DifferenceAsync(string car, DifferenceAsked asked) =>
        PostAsync<OutlookDifference>($"api/cars/{car}/difference", asked);

    public Task<Reply<ShownForecast>> ForecastAsync(string car, ForecastAsked asked) =>
        PostAsync<ShownForecast>($"api/cars/{car}/forecast", asked);

    private Task<Reply<T>> GetAsync<T>(string path) => AskAsync<T>(new(HttpMethod.Get, path));

    private Task<Reply<T>> PostAsync<T>(string path, object body)
    {
        var request = new HttpRequestMessage(HttpMethod.Post, path)
        { Content = JsonContent.Create(body, body.GetType(), options: ExchangeJson.Options) };
        request.Headers.Add(OwnHeader, "1");
        return AskAsync<T>(request);
    }

    private async Task<Reply<T>> AskAsync<T>(HttpRequestMessage request)
    {
        try
        {
            using var response = await http.SendAsync(request);
            Ahead = clock?.GetUtcNow() - response.Headers.Date ?? Ahead;
            return new(true, response.IsSuccessStatusCode
                ? Result<T>.Good((await response.Content.ReadFromJsonAsync<T>(ExchangeJson.Options))!)
                : Result<T>.Bad(await FaultsOf(response)));
        }
        catch (Exception problem) when (problem is HttpRequestException or TaskCanceledException or IOException)
        {
            return Reply<T>.Unreached;
        }
        catch (JsonException problem)
        {
            return new(true,
                Result<T>.Bad(new Fault("the server's answer", $"it cannot be read at {problem.Path ?? "$"}",
                    "Load the page again; page and server may be of different versions.")));
        }
    }

    private static async Task<IEnumerable<Fault>> FaultsOf(HttpResponseMessage response)
    {
        try
        {
            var problem = await response.Content.ReadFromJsonAsync<Problem>(ExchangeJson.Options);
            return problem?.Faults is { Count: > 0 } faults
                ? faults
                : [new("the server", problem?.Title ?? "it refused", problem?.Detail ?? "")];
        }
        catch (JsonException)
        {
            return [new("the server", $"it answered {(int)response.StatusCode}", "Try again.")];
        }
    }
}
