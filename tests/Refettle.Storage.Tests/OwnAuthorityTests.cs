using System.Diagnostics;
using System.Security.Cryptography.X509Certificates;
using Microsoft.Extensions.Time.Testing;
using Refettle.Storage.Certificates;

namespace Refettle.Storage.Tests;

/// <summary>Certificates after RFC 5280, judged by the platform's own chain building and by OpenSSL.</summary>
public sealed class OwnAuthorityTests : IDisposable
{
    private static readonly string[] _hosts = ["192.168.1.5", "garage", "garage.local"];

    private readonly Shelf _shelf = new();
    private readonly FakeTimeProvider _clock = new(TimeProvider.System.GetUtcNow());

    public void Dispose() => _shelf.Dispose();

    [Fact]
    public void Its_authority_vouches_for_the_certificate_and_is_kept()
    {
        var (first, second) = (Made(), Made());
        Assert.Equal(first.Authority, second.Authority);
        Assert.Equal(first.Certificate.SerialNumber, second.Certificate.SerialNumber);
        Assert.True(IsTrusted(first, first.Certificate));
    }

    [Fact]
    public void A_certificate_is_renewed_in_time_under_the_same_authority()
    {
        var first = Made();
        _clock.Advance(TimeSpan.FromDays(370));
        var second = Made();
        Assert.NotEqual(first.Certificate.SerialNumber, second.Certificate.SerialNumber);
        Assert.Equal(first.Authority, second.Authority);
    }

    /// <summary>None may be good for longer than what vouches for it; and a clock that was ahead is set back some day.</summary>
    [Theory]
    [InlineData(3500)]
    [InlineData(-40)]
    public void A_certificate_stays_within_the_time_of_its_authority(int days)
    {
        var first = Made();
        var later = OwnAuthority.Of(Folder, [.. _hosts, "192.168.1.9"], new FakeTimeProvider(_clock.GetUtcNow().AddDays(days))).Value;
        using var authority = X509Certificate2.CreateFromPem(first.Authority);
        Assert.Equal(first.Authority, later.Authority);
        Assert.True(later.Certificate.NotBefore >= authority.NotBefore && later.Certificate.NotAfter <= authority.NotAfter);
    }

    [Fact]
    public void A_new_address_gets_a_new_certificate() =>
        Assert.NotEqual(Made().Certificate.SerialNumber,
            OwnAuthority.Of(Folder, [.. _hosts, "192.168.1.9"], _clock).Value.Certificate.SerialNumber);

    [Fact]
    public void Another_authority_is_not_trusted()
    {
        var own = Made();
        var other = OwnAuthority.Of(Path.Combine(_shelf.Folder, "other"), _hosts, _clock).Value;
        Assert.False(IsTrusted(own, other.Certificate));
    }

    [Fact]
    public void Its_keys_are_for_its_owner_alone()
    {
        Made();
        if (OperatingSystem.IsWindows())
            return;
        foreach (var file in Directory.GetFiles(Folder))
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
    }

    [Fact]
    public void OpenSsl_accepts_it_for_its_names_and_nothing_else()
    {
        var own = Made();
        File.WriteAllText(Path.Combine(Folder, "ca.pem"), own.Authority);
        File.WriteAllText(Path.Combine(Folder, "leaf.pem"), own.Certificate.ExportCertificatePem());
        Assert.Contains(": OK", Verify("-verify_hostname", "garage.local"), StringComparison.Ordinal);
        Assert.Contains(": OK", Verify("-verify_ip", "192.168.1.5"), StringComparison.Ordinal);
        Assert.DoesNotContain(": OK", Verify("-verify_hostname", "bank.example"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_one_clear_fault()
    {
        File.WriteAllText(Folder, "in the way");
        Assert.False(OwnAuthority.Of(Folder, _hosts, _clock).IsGood);
    }

    private string Folder => Path.Combine(_shelf.Folder, "tls");

    private OwnCertificate Made() => OwnAuthority.Of(Folder, _hosts, _clock).Value;

    private static bool IsTrusted(OwnCertificate by, X509Certificate2 certificate)
    {
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(X509Certificate2.CreateFromPem(by.Authority));
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        return chain.Build(certificate);
    }

    private string Verify(params string[] words)
    {
        using var process =
            Process.Start(new ProcessStartInfo("openssl", ["verify", "-x509_strict", "-CAfile", "ca.pem", .. words, "leaf.pem"])
            {
                WorkingDirectory = Folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })!;
        var said = process.StandardOutput.ReadToEnd() + process.StandardError.ReadToEnd();
        process.WaitForExit();
        return said;
    }
}
