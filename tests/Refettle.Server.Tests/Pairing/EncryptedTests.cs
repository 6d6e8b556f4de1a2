using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Refettle.Storage;
using Refettle.Storage.Certificates;

namespace Refettle.Server.Tests.Pairing;

public sealed class EncryptedTests
{
    [Fact]
    public async Task A_phone_that_trusts_the_authority_reaches_the_garage_encrypted_and_others_do_not()
    {
        var folder = Directory.CreateTempSubdirectory("refettle-").FullName;
        using var logbook = LogbookStore.Open(Path.Combine(folder, "test.db"), TimeProvider.System, RandomNumberGenerator.Create()).Value;
        var own = OwnAuthority.Of(Path.Combine(folder, "tls"), ["127.0.0.1", "garage"], TimeProvider.System).Value;
        await using (var server = RefettleHost.Build(new() { Logbook = logbook, Devices = logbook.Devices, Certificate = own }))
        {
            await server.StartAsync();
            Uri At(string scheme) =>
                new(server.Urls.Single(url => url.StartsWith(scheme + ":", StringComparison.Ordinal))
                    .Replace("0.0.0.0", "127.0.0.1", StringComparison.Ordinal));
            using var plain = new HttpClient { BaseAddress = At("http") };
            var authority = await plain.GetStringAsync("pair/authority.crt");
            Assert.Equal(own.Authority, authority);
            using var trusting = new HttpClient(Trusting(authority)) { BaseAddress = At("https") };
            Assert.Equal(HttpStatusCode.OK, (await trusting.GetAsync("api/health")).StatusCode);
            using var other = new HttpClient { BaseAddress = At("https") };
            await Assert.ThrowsAsync<HttpRequestException>(() => other.GetAsync("api/health"));
        }

        Directory.Delete(folder, recursive: true);
    }

    private static SocketsHttpHandler Trusting(string authority)
    {
        var policy = new X509ChainPolicy { TrustMode = X509ChainTrustMode.CustomRootTrust, RevocationMode = X509RevocationMode.NoCheck };
        policy.CustomTrustStore.Add(X509Certificate2.CreateFromPem(authority));
        return new() { SslOptions = new SslClientAuthenticationOptions { CertificateChainPolicy = policy } };
    }
}
