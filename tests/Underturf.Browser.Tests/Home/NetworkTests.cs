using System.IO.Compression;
using System.Net;
using System.Net.Http.Headers;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Underturf.FieldLog;
using Underturf.Server;

namespace Underturf.Browser;

/// <summary>The page on a local network: who is let at what, over HTTPS with the authority trusted by the client alone.</summary>
public sealed class NetworkTests : IDisposable
{
    private static readonly byte[] demo = File.ReadAllBytes(Checkout.DemoLog);

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("underturf-test-");

    private string Log => Path.Combine(folder.FullName, "garden.jsonl");

    private string Kept => Path.Combine(folder.FullName, "network");

    public NetworkTests() => File.WriteAllBytes(Log, demo);

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public async Task A_paired_device_reads_the_log_and_adds_to_it_and_a_stranger_gets_the_page_only()
    {
        await using var door = await NetworkDoor.OpenAsync(Log, Kept);
        using var authority = X509CertificateLoader.LoadCertificateFromFile(Path.Combine(Kept, "authority.crt"));
        using var paired = NetworkDoor.Client(authority, door.Secret);
        using var stranger = NetworkDoor.Client(authority, "a-secret-that-is-wrong");
        var log = new Uri(door.Page, "log.jsonl");
        Assert.Equal(demo, await paired.GetByteArrayAsync(log, TestContext.Current.CancellationToken));
        Assert.Contains("<title>Underturf</title>", await stranger.GetStringAsync(door.Page, TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.Unauthorized, await StatusAsync(stranger.GetAsync(log, TestContext.Current.CancellationToken)));
        Assert.Equal(HttpStatusCode.Unauthorized, await PushAsync(stranger, log));
        Assert.Equal(demo, await File.ReadAllBytesAsync(Log, TestContext.Current.CancellationToken));
        Assert.Equal(HttpStatusCode.OK, await PushAsync(paired, log));
        Assert.Equal(LogDocument.Read(demo).Entries.Count + 1, LogDocument.Read(await File.ReadAllBytesAsync(Log, TestContext.Current.CancellationToken)).Entries.Count);
    }

    [Theory]
    [InlineData("br")]
    [InlineData("gzip")]
    public async Task What_goes_to_a_phone_is_compressed_and_is_the_same_once_unpacked(string way)
    {
        await using var door = await NetworkDoor.OpenAsync(Log, Kept);
        using var authority = X509CertificateLoader.LoadCertificateFromFile(Path.Combine(Kept, "authority.crt"));
        using var phone = NetworkDoor.Client(authority, door.Secret);
        var heavy = new Uri(door.Page, "notebook.css");
        var plain = await phone.GetByteArrayAsync(heavy, TestContext.Current.CancellationToken);
        phone.DefaultRequestHeaders.AcceptEncoding.ParseAdd(way);
        using var answer = await phone.GetAsync(heavy, TestContext.Current.CancellationToken);
        var packed = await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        Assert.Equal(way, Assert.Single(answer.Content.Headers.ContentEncoding));
        Assert.InRange(packed.Length, 1, plain.Length / 3);
        await using Stream unpacking = way == "br" ? new BrotliStream(new MemoryStream(packed), CompressionMode.Decompress) : new GZipStream(new MemoryStream(packed), CompressionMode.Decompress);
        using var unpacked = new MemoryStream();
        await unpacking.CopyToAsync(unpacked, TestContext.Current.CancellationToken);
        Assert.Equal(plain, unpacked.ToArray());
    }

    [Fact]
    public async Task The_door_without_encryption_gives_out_the_authority_with_instructions_and_nothing_else()
    {
        await using var door = await NetworkDoor.OpenAsync(Log, Kept);
        using var client = new HttpClient();
        var words = await client.GetStringAsync(door.Authority, TestContext.Current.CancellationToken);
        Assert.Contains(door.Doors.Fingerprint!, words, StringComparison.Ordinal);
        Assert.DoesNotContain(door.Secret, words, StringComparison.Ordinal);
        using var given = X509CertificateLoader.LoadCertificate(await client.GetByteArrayAsync(new Uri(door.Authority, "underturf-authority.crt"), TestContext.Current.CancellationToken));
        Assert.False(given.HasPrivateKey);
        Assert.Equal(door.Doors.Fingerprint!.Replace(":", "", StringComparison.Ordinal), given.GetCertHashString(HashAlgorithmName.SHA256));
        foreach (var other in new[] { "log.jsonl", "index.html", "authority.key", "../network/authority.key" })
        {
            Assert.Equal(HttpStatusCode.NotFound, await StatusAsync(client.GetAsync(new Uri(door.Authority, other), TestContext.Current.CancellationToken)));
        }
    }

    [Fact]
    public async Task The_authority_and_the_pairing_stay_from_one_start_to_the_next_and_nobody_else_may_read_them()
    {
        var (first, second) = (await OpenAndCloseAsync(), await OpenAndCloseAsync());
        Assert.Equal(first.Fingerprint, second.Fingerprint);
        Assert.Equal(first.Page.Fragment, second.Page.Fragment);
        foreach (var name in new[] { "authority.key", "pairing" })
        {
            // Elsewhere the folder of the user's data is what keeps others out.
            Assert.True(OperatingSystem.IsWindows() || File.GetUnixFileMode(Path.Combine(Kept, name)) == (UnixFileMode.UserRead | UnixFileMode.UserWrite));
        }
    }

    [Fact]
    public async Task This_machine_is_served_without_pairing_as_before_and_alone_is_shown_the_codes()
    {
        await using var door = await NetworkDoor.OpenAsync(Log, Kept);
        using var client = new HttpClient();
        Assert.Equal(demo, await client.GetByteArrayAsync(new Uri(door.Served.Address, "log.jsonl"), TestContext.Current.CancellationToken));
        Assert.Contains("<svg", await client.GetStringAsync(new Uri(door.Served.Address, "phones"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        using var authority = X509CertificateLoader.LoadCertificateFromFile(Path.Combine(Kept, "authority.crt"));
        using var paired = NetworkDoor.Client(authority, door.Secret);
        Assert.Equal(HttpStatusCode.NotFound, await StatusAsync(paired.GetAsync(new Uri(door.Page, "phones"), TestContext.Current.CancellationToken)));
    }

    [Fact]
    public async Task A_certificate_of_one_s_own_is_shown_in_place_of_the_authority_s()
    {
        var (certificate, key) = OwnCertificate();
        await using var door = await NetworkDoor.OpenAsync(Log, Kept, certificate, key);
        Assert.Equal("garden.example", door.Doors.Page.Host);
        Assert.Null(door.Doors.Authority);
        using var own = X509CertificateLoader.LoadCertificateFromFile(certificate);
        using var client = NetworkDoor.Client(own, door.Secret);
        Assert.Equal(demo, await client.GetByteArrayAsync(new Uri(door.Page, "log.jsonl"), TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("own.crt", null, "belong together")]
    [InlineData("own.crt", "missing.key", "no such file")]
    [InlineData("own.crt", "garden.jsonl", "cannot be used")]
    [InlineData("garden.jsonl", "own.key", "cannot be used")]
    public async Task A_certificate_that_cannot_be_used_is_named_with_a_remedy(string certificate, string? key, string reason)
    {
        OwnCertificate();
        var options = new NetworkOptions(Kept, 0, 0, _ => Assert.Fail("It served.")) { Certificate = Path.Combine(folder.FullName, certificate), Key = key is null ? null : Path.Combine(folder.FullName, key) };
        var problem = await ServerHost.RunAsync(new ServeOptions(0, Log, _ => Assert.Fail("It served.")) { Network = options }, TestContext.Current.CancellationToken);
        Assert.Contains(reason, problem!.Reason, StringComparison.Ordinal);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public async Task An_address_of_the_internet_needs_a_certificate_of_one_s_own()
    {
        var options = new NetworkOptions(Kept, 0, 0, _ => Assert.Fail("It served.")) { Address = IPAddress.Parse("203.0.113.5") };
        var problem = await ServerHost.RunAsync(new ServeOptions(0, Log, _ => Assert.Fail("It served.")) { Network = options }, TestContext.Current.CancellationToken);
        Assert.Equal("address 203.0.113.5", problem!.Place);
    }

    [Fact]
    public async Task A_secret_or_an_authority_that_was_damaged_is_named_and_not_replaced()
    {
        await OpenAndCloseAsync();
        foreach (var name in new[] { "pairing", "authority.key" })
        {
            var file = Path.Combine(Kept, name);
            var whole = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
            await File.WriteAllTextAsync(file, "?", TestContext.Current.CancellationToken);
            var problem = await ServerHost.RunAsync(new ServeOptions(0, Log, _ => Assert.Fail("It served.")) { Network = new NetworkOptions(Kept, 0, 0, _ => { }) { Address = IPAddress.Loopback } }, TestContext.Current.CancellationToken);
            Assert.StartsWith(Kept, problem!.Place, StringComparison.Ordinal);
            await File.WriteAllTextAsync(file, whole, TestContext.Current.CancellationToken);
        }
    }

    private async Task<NetworkDoors> OpenAndCloseAsync()
    {
        await using var door = await NetworkDoor.OpenAsync(Log, Kept);
        return door.Doors;
    }

    private static async Task<HttpStatusCode> StatusAsync(Task<HttpResponseMessage> asked)
    {
        using var answer = await asked;
        return answer.StatusCode;
    }

    private static async Task<HttpStatusCode> PushAsync(HttpClient client, Uri log)
    {
        byte[] line = [.. Pen.Seal("memorial-garden", "page-a", null, new HybridTime(1_932_600_000_000, 0), new ToldFact { Who = "Jory", Text = "one" }).Value.Line.ToArray(), (byte)'\n'];
        using var content = new ByteArrayContent(line) { Headers = { ContentType = new MediaTypeHeaderValue("application/jsonl") } };
        return await StatusAsync(client.PostAsync(log, content));
    }

    private (string Certificate, string Key) OwnCertificate()
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=garden.example", key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        names.AddDnsName("garden.example");
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        using var made = request.CreateSelfSigned(DateTimeOffset.UtcNow.AddDays(-1), DateTimeOffset.UtcNow.AddDays(30));
        var (certificate, keyFile) = (Path.Combine(folder.FullName, "own.crt"), Path.Combine(folder.FullName, "own.key"));
        File.WriteAllText(certificate, made.ExportCertificatePem());
        File.WriteAllText(keyFile, key.ExportPkcs8PrivateKeyPem());
        return (certificate, keyFile);
    }
}
