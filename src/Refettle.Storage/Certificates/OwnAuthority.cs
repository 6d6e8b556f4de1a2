using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Refettle.Storage.Keys;

namespace Refettle.Storage.Certificates;

/// <summary>A certificate for this machine, and the authority that vouches for it: trusted once on a phone, it makes the garage
/// a secure place for its browser.</summary>
/// <param name="Authority">What the phone is told to trust, in PEM; its key never leaves this machine.</param>
public sealed record OwnCertificate(X509Certificate2 Certificate, string Authority);

/// <summary>Makes and keeps both in a folder that only its owner may read. The authority may vouch for addresses of home networks
/// and this machine's names alone.</summary>
public static class OwnAuthority
{
    private const string AuthorityFile = "authority.pem";
    private const string ServerFile = "server.pem";
    private const int AuthorityYears = 10;

    /// <summary>Browsers refuse longer ones (CA/Browser Forum baseline requirements §6.3.2, from memory).</summary>
    private const int ServerDays = 397;
    private const int RenewDays = 30;

    /// <param name="folder">Where they are kept; made when missing.</param>
    /// <param name="hosts">Names and addresses of this machine.</param>
    public static Result<OwnCertificate> Of(string folder, IReadOnlyList<string> hosts, TimeProvider clock)
    {
        try
        {
            Directory.CreateDirectory(folder);
            var now = clock.GetUtcNow();
            using var authority = Kept(Path.Combine(folder, AuthorityFile), now, _ => true)
                ?? Keep(Path.Combine(folder, AuthorityFile), NewAuthority(hosts, now));
            var server = Kept(Path.Combine(folder, ServerFile), now, known => IsFor(known, hosts) && IsBy(known, authority))
                ?? Keep(Path.Combine(folder, ServerFile), NewServer(authority, hosts, now));
            return Result<OwnCertificate>.Good(new(server, authority.ExportCertificatePem()));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or CryptographicException)
        {
            return Result<OwnCertificate>.Bad(new Fault(folder, $"the certificates cannot be kept there ({problem.Message.TrimEnd('.')})",
                "See who owns the folder; if a file in it is damaged, move the folder away and trust the new authority on each phone."));
        }
    }

    private static X509Certificate2? Kept(string file, DateTimeOffset now, Func<X509Certificate2, bool> isGood)
    {
        if (!File.Exists(file))
            return null;
        var known = X509Certificate2.CreateFromPemFile(file);
        if (known.NotAfter > now.UtcDateTime.AddDays(RenewDays).ToLocalTime() && isGood(known))
            return known;
        known.Dispose();
        return null;
    }

    private static X509Certificate2 Keep(string file, X509Certificate2 made)
    {
        using var key = made.GetECDsaPrivateKey()!;
        OwnerFile.Write(file, $"{made.ExportCertificatePem()}\n{key.ExportPkcs8PrivateKeyPem()}\n");
        return made;
    }

    private static X509Certificate2 NewAuthority(IReadOnlyList<string> hosts, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN=Refettle on {Environment.MachineName}", key, HashAlgorithmName.SHA256);
        request.CertificateExtensions
            .Add(new X509BasicConstraintsExtension(certificateAuthority: true, hasPathLengthConstraint: true, pathLengthConstraint: 0,
                critical: true));
        request.CertificateExtensions
            .Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign | X509KeyUsageFlags.CrlSign, critical: true));
        request.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(request.PublicKey, critical: false));
        request.CertificateExtensions.Add(NameLimits.To(Names(hosts), Addresses(hosts)));
        return request.CreateSelfSigned(now.AddDays(-1), now.AddYears(AuthorityYears));
    }

    private static X509Certificate2 NewServer(X509Certificate2 authority, IReadOnlyList<string> hosts, DateTimeOffset now)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest($"CN={Environment.MachineName}", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        foreach (var name in Names(hosts))
            names.AddDnsName(name);
        foreach (var address in Addresses(hosts))
            names.AddIpAddress(address);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new("1.3.6.1.5.5.7.3.1")], critical: false));
        request.CertificateExtensions
            .Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(authority, includeKeyIdentifier: true,
                includeIssuerAndSerial: false));
        var serial = new byte[16];
        RandomNumberGenerator.Fill(serial);
        serial[0] &= 0x7F;
        using var signed = request.Create(authority, Latest(now.AddDays(-1), authority.NotBefore),
            Earliest(now.AddDays(ServerDays), authority.NotAfter), serial);
        return signed.CopyWithPrivateKey(key);
    }

    /// <summary>Nothing may be good before or after what vouches for it, also when the clock was set back, or the
    /// authority has less than a year left.</summary>
    private static DateTimeOffset Latest(DateTimeOffset one, DateTimeOffset other) => one > other ? one : other;

    private static DateTimeOffset Earliest(DateTimeOffset one, DateTimeOffset other) => one < other ? one : other;

    private static bool IsBy(X509Certificate2 known, X509Certificate2 authority) =>
        known.Extensions.OfType<X509AuthorityKeyIdentifierExtension>().Single().KeyIdentifier is { } by
        && by.Span.SequenceEqual(authority.Extensions.OfType<X509SubjectKeyIdentifierExtension>().Single().SubjectKeyIdentifierBytes.Span);

    private static bool IsFor(X509Certificate2 known, IReadOnlyList<string> hosts)
    {
        var names = known.Extensions.OfType<X509SubjectAlternativeNameExtension>().Single();
        return Names(hosts).All(names.EnumerateDnsNames().Contains) && Addresses(hosts).All(names.EnumerateIPAddresses().Contains);
    }

    private static IEnumerable<string> Names(IEnumerable<string> hosts) => hosts.Where(host => !IPAddress.TryParse(host, out _)).Distinct();

    private static IEnumerable<IPAddress> Addresses(IEnumerable<string> hosts) =>
        hosts.Select(host => IPAddress.TryParse(host, out var address)
            && address.AddressFamily == System.Net.Sockets.AddressFamily.InterNetwork ? address : null).OfType<IPAddress>().Distinct();
}
