using System.Net;
using System.Security.Cryptography.X509Certificates;
using Underturf.Server;

namespace Underturf.Browser;

/// <summary>What the certificates of the server's own authority are good for, and what not.</summary>
public sealed class AuthorityTests : IDisposable
{
    private static readonly DateTimeOffset now = DateTimeOffset.UtcNow;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");
    private readonly Authority authority;

    public AuthorityTests() => authority = Authority.Of(folder.FullName, now).Value;

    public void Dispose()
    {
        authority.Dispose();
        folder.Delete(recursive: true);
    }

    [Theory]
    [InlineData("localhost", "192.168.1.7", true)]
    [InlineData("localhost", "10.0.0.9", true)]
    [InlineData("garden.example", "192.168.1.7", false)]
    [InlineData("localhost", "203.0.113.5", false)]
    public void A_certificate_is_good_for_names_of_this_machine_and_addresses_of_local_networks_only(string name, string address, bool good)
    {
        using var leaf = authority.Certify([name], [IPAddress.Parse(address)], now);
        using var root = X509CertificateLoader.LoadCertificate(authority.Bytes);
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.CustomTrustStore.Add(root);
        Assert.Equal(good, chain.Build(leaf));
        Assert.True(leaf.MatchesHostname(name));
    }

    [Fact]
    public void The_server_s_certificate_is_made_anew_a_month_before_it_runs_out_and_kept_until_then()
    {
        var clock = new SetClock(now);
        var kept = new ServerCertificate(authority, null, clock);
        var first = kept.Current;
        clock.Now = now.AddDays(59);
        Assert.Same(first, kept.Current);
        clock.Now = now.AddDays(61);
        Assert.NotSame(first, kept.Current);
        Assert.Equal(now.AddDays(151).UtcDateTime, kept.Current.NotAfter.ToUniversalTime(), TimeSpan.FromMinutes(1));
    }

    [Fact]
    public void An_authority_that_is_about_to_run_out_is_replaced()
    {
        using var later = Authority.Of(folder.FullName, now.AddYears(10).AddDays(-30)).Value;
        Assert.NotEqual(authority.Fingerprint, later.Fingerprint);
    }

    private sealed class SetClock(DateTimeOffset now) : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = now;

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
