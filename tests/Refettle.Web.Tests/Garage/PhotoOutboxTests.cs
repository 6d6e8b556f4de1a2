using System.Net;
using System.Text.Json;
using CsCheck;
using Refettle.Web.Garage;

namespace Refettle.Web.Tests.Garage;

public sealed class PhotoOutboxTests
{
    private static readonly byte[] _picture = [.. Enumerable.Range(0, 700_000).Select(i => (byte)(i * 31))];
    private static readonly string _hash = ContentHash.Of(_picture);

    [Fact]
    public async Task A_picture_goes_in_pieces_and_then_waits_no_more()
    {
        var shelf = new PhotoShelf();
        using var outbox = new PhotoOutbox(Server(shelf), await KeeperAsync());
        await outbox.SendAsync();
        Assert.Equal(0, outbox.Waiting);
        Assert.Equal(_picture, shelf.Kept[_hash]);
        Assert.Equal(3, shelf.Pieces);
    }

    [Fact]
    public async Task What_waits_from_before_is_known_before_anything_is_sent()
    {
        using var outbox = new PhotoOutbox(Server(new()), await KeeperAsync());
        await outbox.LoadAsync();
        Assert.Equal(1, outbox.Waiting);
    }

    [Fact]
    public void However_the_network_fails_the_picture_arrives_whole_in_the_end() => Gen.Int[0, 3].Array[0, 12].Sample(async failures =>
    {
        var shelf = new PhotoShelf { Failures = new(failures) };
        using var outbox = new PhotoOutbox(Server(shelf), await KeeperAsync());
        for (var tries = 0; tries < 14 && (tries == 0 || outbox.Waiting > 0); tries++)
            await outbox.SendAsync();
        Assert.Equal(0, outbox.Waiting);
        Assert.Equal(_picture, shelf.Kept[_hash]);
    }, iter: 100);

    [Fact]
    public async Task A_picture_that_is_refused_stays_here_and_says_why()
    {
        var shelf = new PhotoShelf { Refuses = true };
        using var outbox = new PhotoOutbox(Server(shelf), await KeeperAsync());
        await outbox.SendAsync();
        Assert.Equal(1, outbox.Waiting);
        Assert.Contains("another hash", Assert.Single(outbox.Faults).Found, StringComparison.Ordinal);
    }

    private static async Task<MemoryPhotoKeeper> KeeperAsync()
    {
        var keeper = new MemoryPhotoKeeper();
        await keeper.KeepAsync(_hash, _picture, false);
        return keeper;
    }

    private static ServerApi Server(PhotoShelf shelf) => new(new(shelf) { BaseAddress = new("http://garage/") });

    /// <summary>A server that keeps what it is sent; each number makes the next call fail: 1 before it is
    /// heard, 2 after, 3 answers nonsense.</summary>
    private sealed class PhotoShelf : HttpMessageHandler
    {
        private byte[] _here = [];

        public Dictionary<string, byte[]> Kept { get; } = [];

        public Queue<int> Failures { get; init; } = [];

        public bool Refuses { get; init; }

        public int Pieces { get; private set; }

        protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
        {
            var failure = Failures.TryDequeue(out var kind) ? kind : 0;
            if (failure == 1)
                throw new HttpRequestException("lost");
            if (request.Method == HttpMethod.Put)
                await TakeAsync(request, cancellationToken);
            if (failure == 2)
                throw new HttpRequestException("answer lost");
            if (failure == 3)
                return new(HttpStatusCode.BadGateway) { Content = new StringContent("<html>") };
            if (Refuses && request.Method == HttpMethod.Put)
                return new(HttpStatusCode.UnprocessableEntity)
                { Content = Json(new Problem("no", null, [new Fault("photo", "what arrived has another hash", "Again.")])) };
            return new(HttpStatusCode.OK) { Content = Json(new PhotoArrived(_here.Length, Kept.Count > 0)) };
        }

        private async Task TakeAsync(HttpRequestMessage request, CancellationToken cancel)
        {
            Pieces++;
            var asked = System.Web.HttpUtility.ParseQueryString(request.RequestUri!.Query);
            var (from, of) = (int.Parse(asked["from"]!, System.Globalization.CultureInfo.InvariantCulture),
                int.Parse(asked["of"]!, System.Globalization.CultureInfo.InvariantCulture));
            var piece = await request.Content!.ReadAsByteArrayAsync(cancel);
            if (from <= _here.Length)
                _here = [.. _here[..from], .. piece, .. _here.Skip(from + piece.Length)];
            if (_here.Length == of && !Refuses)
                Kept[_hash] = _here;
        }

        private static StringContent Json<T>(T value) =>
            new(JsonSerializer.Serialize(value, ExchangeJson.Options), null, "application/json");
    }
}
