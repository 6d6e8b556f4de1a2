namespace Refettle.Server.Tests.Network;

/// <summary>What happens to a request on its way.</summary>
internal enum Fate
{
    Arrives,
    RequestLost,
    AnswerLost,
    Twice,

    /// <summary>The sender gives up; the request arrives later, after others that were sent after it.</summary>
    Late,

    /// <summary>The connection breaks when half of the body is sent.</summary>
    Cut,
}

/// <summary>A network between one device and the server. Its fates come from a seed.</summary>
/// <param name="faults">How many requests of a hundred do not simply arrive.</param>
internal sealed class FaultyNetwork(Random random, int faults)
    : DelegatingHandler(new SocketsHttpHandler { UseCookies = false, UseProxy = false })
{
    private readonly List<HttpRequestMessage> _late = [];

    /// <summary>From now on everything arrives.</summary>
    public bool IsHealed { get; set; }

    /// <summary>How often each fate came about.</summary>
    public Dictionary<Fate, int> Fates { get; } = [];

    /// <summary>Lets some of the late requests arrive, in any order.</summary>
    public async Task DeliverLateAsync(bool all)
    {
        var due = _late.Where(_ => all || random.Next(2) == 0).OrderBy(_ => random.Next()).ToList();
        _late.RemoveAll(due.Contains);
        foreach (var request in due)
            (await base.SendAsync(request, CancellationToken.None)).Dispose();
    }

    protected override async Task<HttpResponseMessage> SendAsync(HttpRequestMessage request, CancellationToken cancellationToken)
    {
        var fate = IsHealed || random.Next(100) >= faults ? Fate.Arrives : (Fate)random.Next(1, 6);
        Fates[fate] = Fates.GetValueOrDefault(fate) + 1;
        if (fate == Fate.RequestLost)
            throw Broken();
        if (fate == Fate.Late)
        {
            _late.Add(await CopyAsync(request));
            throw Broken();
        }

        if (fate == Fate.Twice)
            (await base.SendAsync(await CopyAsync(request), cancellationToken)).Dispose();
        if (fate == Fate.Cut && request.Content is { } content)
            request.Content = new HalfContent(await content.ReadAsByteArrayAsync(cancellationToken));
        var answer = await base.SendAsync(request, cancellationToken);
        if (fate is not (Fate.AnswerLost or Fate.Cut))
            return answer;
        answer.Dispose();
        throw Broken();
    }

    private static HttpRequestException Broken() => new("the network broke");

    private static async Task<HttpRequestMessage> CopyAsync(HttpRequestMessage request)
    {
        var copy = new HttpRequestMessage(request.Method, request.RequestUri);
        foreach (var (name, values) in request.Headers)
            copy.Headers.Add(name, values);
        if (request.Content is { } content)
        {
            copy.Content = new ByteArrayContent(await content.ReadAsByteArrayAsync());
            copy.Content.Headers.ContentType = content.Headers.ContentType;
        }

        return copy;
    }

    /// <summary>Promises the whole body, sends half of it and breaks.</summary>
    private sealed class HalfContent : HttpContent
    {
        private readonly byte[] _bytes;

        public HalfContent(byte[] bytes)
        {
            _bytes = bytes;
            Headers.ContentType = new("application/json");
        }

        protected override async Task SerializeToStreamAsync(Stream stream, System.Net.TransportContext? context)
        {
            await stream.WriteAsync(_bytes.AsMemory(0, _bytes.Length / 2));
            await stream.FlushAsync();
            throw Broken();
        }

        protected override bool TryComputeLength(out long length)
        {
            length = _bytes.Length;
            return true;
        }
    }
}
