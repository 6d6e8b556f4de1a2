using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using Refettle.Logbook;
using Refettle.Storage;
using Refettle.Web.Garage;

namespace Refettle.Server.Tests.Api;

public sealed class PhotoRoutesTests
{
    private static readonly byte[] _picture = [0x89, .. "PNG\r\n"u8, 0x1A, 0x0A, 0, 0, 0, 13, .. "IHDR"u8, .. new byte[17], 0, 0, 0x10, 0,
        .. "IDAT"u8, .. new byte[0x1000 + 4], 0, 0, 0, 0, .. "IEND"u8, .. new byte[4]];
    private static readonly string _hash = ContentHash.Of(_picture);

    [Fact]
    public async Task A_picture_goes_on_where_it_broke_off_and_is_given_out_for_ever()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var page = garage.Page();
        Assert.Equal(new PhotoArrived(0, false), await (await page.GetAsync($"api/photos/{_hash}/progress")).ReadAsync<PhotoArrived>());
        Assert.Equal(new PhotoArrived(1_000, false), await (await PutAsync(page, 0, 1_000)).ReadAsync<PhotoArrived>());
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync($"api/photos/{_hash}")).StatusCode);
        Assert.Equal(new PhotoArrived(_picture.Length, true),
            await (await PutAsync(page, 1_000, _picture.Length - 1_000)).ReadAsync<PhotoArrived>());
        Assert.Equal(new PhotoArrived(_picture.Length, true), await (await PutAsync(page, 0, 1_000)).ReadAsync<PhotoArrived>());
        var given = await page.GetAsync($"api/photos/{_hash}");
        Assert.Equal("image/png", given.Content.Headers.ContentType?.MediaType);
        Assert.Contains("immutable", given.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        Assert.Equal(_picture, await given.Content.ReadAsByteArrayAsync());
    }

    /// <summary>Not "not found": another bay may have it.</summary>
    [Fact]
    public async Task While_the_shared_photos_are_out_of_reach_that_is_what_is_said()
    {
        var folder = Directory.CreateTempSubdirectory("refettle-away-");
        using var logbook =
            LogbookStore.Open(Path.Combine(folder.FullName, "test.db"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        await using var server =
            RefettleHost.Build(new() { Logbook = logbook, Photos = new(Path.Combine(folder.FullName, "photos"), new Away()) });
        await server.StartAsync();
        using var page = new HttpClient { BaseAddress = new(server.Urls.First()) };
        page.DefaultRequestHeaders.Add(ServerApi.OwnHeader, "1");
        var asked = await page.GetAsync($"api/photos/{_hash}");
        Assert.Equal(HttpStatusCode.ServiceUnavailable, asked.StatusCode);
        Assert.Contains("cannot be reached", await asked.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        var sent = await PutAsync(page, 0, _picture.Length);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, sent.StatusCode);
        Assert.Contains("cannot be reached", await sent.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        await server.StopAsync();
        folder.Delete(recursive: true);
    }

    private sealed class Away : ISharedPictures
    {
        private static readonly Fault Fault = new("the database server", "it cannot be reached", "Check that it runs.");

        public byte[]? Find(string hash) => throw new LogbookException(Fault);

        public Result<string> Add(string hash, byte[] bytes) => Result<string>.Bad(Fault);

        public ValueList<string> All() => throw new LogbookException(Fault);
    }

    [Fact]
    public async Task Only_these_pages_send_pictures_and_only_pictures_are_not_json()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var stranger = new HttpClient { BaseAddress = garage.Address };
        Assert.Equal(HttpStatusCode.Forbidden, (await PutAsync(stranger, 0, 1_000)).StatusCode);
        using var page = garage.Page();
        var entries = new ByteArrayContent("[]"u8.ToArray()) { Headers = { ContentType = new("application/octet-stream") } };
        Assert.Equal(HttpStatusCode.UnsupportedMediaType, (await page.PostAsync($"api/cars/{SmallCar.Id}/entries", entries)).StatusCode);
    }

    [Fact]
    public async Task What_is_no_picture_or_has_no_hash_for_a_name_is_refused_in_words()
    {
        await using var garage = await TestGarage.OpenAsync(planner: null);
        using var page = garage.Page();
        var script = "<script>alert(1)</script>"u8.ToArray();
        var refused = await page.PutAsync($"api/photos/{ContentHash.Of(script)}?from=0&of={script.Length}", Bytes(script));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("no JPEG", await refused.Content.ReadAsStringAsync(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.UnprocessableEntity,
            (await page.PutAsync("api/photos/..%2F..%2Fx?from=0&of=3", Bytes([1, 2, 3]))).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await page.GetAsync("api/photos/..%2Ftest.db")).StatusCode);
        // A server that refuses a body does not read it to its end: who has sent half of it by then may hear of a
        // broken connection instead of the answer.
        page.DefaultRequestHeaders.ExpectContinue = true;
        Assert.Equal(HttpStatusCode.BadRequest,
            (await page.PutAsync($"api/photos/{_hash}?from=0&of=5000000", Bytes(new byte[4_500_000]))).StatusCode);
    }

    private static Task<HttpResponseMessage> PutAsync(HttpClient client, int from, int length) =>
        client.PutAsync($"api/photos/{_hash}?from={from}&of={_picture.Length}", Bytes(_picture.AsSpan(from, length).ToArray()));

    private static ByteArrayContent Bytes(byte[] bytes) =>
        new(bytes) { Headers = { ContentType = new MediaTypeHeaderValue("application/octet-stream") } };
}
