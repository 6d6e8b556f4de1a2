using System.Net.Http.Json;
using System.Text;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests;

/// <summary>Calls the server as a page or as something else would.</summary>
internal static class Caller
{
    public static HttpClient Page(this TestGarage garage)
    {
        var client = new HttpClient { BaseAddress = garage.Address };
        client.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        return client;
    }

    public static Task<HttpResponseMessage> PostJsonAsync<T>(this HttpClient client, string path, T body) =>
        client.PostAsync(path, JsonContent.Create(body, options: ExchangeJson.Options));

    public static Task<HttpResponseMessage> PostTextAsync(
        this HttpClient client, string path, string body, string type = "application/json") =>
        client.PostAsync(path, new StringContent(body, Encoding.UTF8, type));

    public static async Task<T> ReadAsync<T>(this HttpResponseMessage response) =>
        (await response.Content.ReadFromJsonAsync<T>(ExchangeJson.Options))!;
}
