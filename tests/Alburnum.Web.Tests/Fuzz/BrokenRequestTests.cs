using System.Net.Sockets;
using System.Text;
using Alburnum.Records.CaseFolders;
using Alburnum.Tests.Shared;
using Alburnum.Tests.Shared.Fuzz;

namespace Alburnum.Web.Tests.Fuzz;

/// <summary>Whatever a request holds, it is answered in words: never as a fault of the server's, and the server goes on.</summary>
public sealed class BrokenRequestTests : IAsyncLifetime
{
    /// <summary>A request for every fault that was found.</summary>
    public static TheoryData<string> Kept =>
        [.. Directory.GetFiles(KeptFolder).Select(file => Path.GetFileName(file)).Order()];

    private const string Enquiry =
        "component=fence post&species=Sitka spruce&section=75x75&service_life=15&use_class=4&incised=no&insects=none"
        + "&moisture=24 %&stated_class=NP5&preservative=copper azole&rulebook=british-2014";

    private const string Marks =
        "corners=512,180 1610,220 1570,1340 480,1290&treated=530,700&untreated=1040,760&leaveOut=700,410"
        + "&heartwood=800,600 1300,600 1300,1000&scale=300,1500 900,1500 50 mm&next=corners&at600.x=4&at600.y=9";

    private const string Boundary = "--edge";

    private const string Rulebook =
        "basedOn: british-2014\nconfirmed:\n  - { key: in-ground-15-sawn-permeable, edition: \"2011+A1:2014\", table: table 4, page: \"17\","
        + " initials: AB, date: 2026-05-12 }\n";

    private static readonly Mutator OfText = new(DamagedText.Ways);
    private static readonly Mutator OfBytes = new([.. DamagedBytes.Ways, .. DamagedText.Ways]);

    /// <summary>Longer than any answer takes.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    /// <summary>How long the server may wait for the rest of a request that says it is longer than it is.</summary>
    private static readonly TimeSpan RestAwaited = TimeSpan.FromSeconds(1);

    private Site? _site;

    private static string KeptFolder => Repository.At("tests", "Alburnum.Web.Tests", "Fuzz", "Kept");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private Site Site => _site!;

    public async ValueTask InitializeAsync()
    {
        _site = await Site.OpenAsync();
        await Site.KeepPostsAsync();
        await Site.KeepAsync(new FolderFiles(Repository.At("tests", "Alburnum.Records.Tests", "Store", "Case")));
    }

    public ValueTask DisposeAsync() => Site.DisposeAsync();

    [Theory]
    [MemberData(nameof(Kept))]
    public async Task A_request_that_once_was_a_fault_is_answered_in_words(string file)
    {
        var request = await File.ReadAllBytesAsync(Path.Combine(KeptFolder, file), Stop);

        Assert.Null(await FaultAsync(request, ".http"));
    }

    [Fact]
    public Task An_awkward_value_is_answered_in_words() =>
        FuzzRun.HoldAsync(
            "values",
            250,
            random =>
            {
                string[] fields = [Enquiry, Enquiry, Marks, "about=waste&preservative=CCA&place=Germany"];
                string[] paths = ["/requirement", "/api/requirement", "/cases/2/pieces/1", "/handling"];
                var which = random.Next(paths.Length);
                var pairs = fields[which]
                    .Split('&')
                    .Select(pair => pair.Split('='))
                    .Select(pair =>
                        $"{pair[0]}={(random.Next(4) == 0 ? Awkward(pair[1], random) : Uri.EscapeDataString(pair[1]))}"
                    );
                return (Get($"{paths[which]}?{string.Join('&', pairs)}"), ".http");
            },
            FaultAsync
        );

    [Fact]
    public Task A_damaged_file_that_is_sent_is_answered_in_words() =>
        FuzzRun.HoldAsync(
            "sent",
            150,
            random =>
                (
                    Post(
                        random.Next(2) == 0 ? "/api/requirement" : "/api/cases/1/rulebook",
                        OfBytes.Of(Encoding.UTF8.GetBytes(Rulebook), random)
                    ),
                    ".http"
                ),
            FaultAsync
        );

    [Fact]
    public async Task A_damaged_request_is_answered_or_hung_up_on()
    {
        byte[][] whole =
        [
            Get("/requirement?" + Enquiry.Replace(' ', '+')),
            Get("/cases/1"),
            Get("/cases/2/pieces/1?corners=0,0"),
            Get("/api/requirement?component=fence+post"),
            Get("/photographs/0123456789abcdef"),
            Post("/api/requirement", Encoding.UTF8.GetBytes(Rulebook)),
            Post("/cases/1", Encoding.UTF8.GetBytes(Rulebook)),
            Json("{\"component\":\"fence post\",\"species\":\"Sitka spruce\",\"incised\":false,\"service_life\":15}"),
        ];
        await FuzzRun.HoldAsync(
            "requests",
            250,
            random => (OfBytes.Of(whole[random.Next(whole.Length)], random), ".http"),
            FaultAsync
        );

        using var still = await Site.Browser.GetAsync(new Uri("/", UriKind.Relative), Stop);
        still.EnsureSuccessStatusCode();
    }

    private static string Awkward(string value, Random random) =>
        string.Concat(OfText.Of(Encoding.UTF8.GetBytes(value), random).Take(3000).Select(each => $"%{each:X2}"));

    private byte[] Get(string address) => Request("GET", address, "", []);

    private byte[] Json(string text) =>
        Request("POST", "/api/requirement", "Content-Type: application/json\r\n", Encoding.UTF8.GetBytes(text));

    private byte[] Post(string address, byte[] file) =>
        Request(
            "POST",
            address,
            $"Content-Type: multipart/form-data; boundary={Boundary[2..]}\r\n",
            [
                .. Encoding.UTF8.GetBytes(
                    $"{Boundary}\r\nContent-Disposition: form-data; name=\"component\"\r\n\r\nfence post\r\n"
                        + $"{Boundary}\r\nContent-Disposition: form-data; name=\"rulebook\"; filename=\"my.yaml\"\r\n\r\n"
                ),
                .. file,
                .. Encoding.UTF8.GetBytes($"\r\n{Boundary}--\r\n"),
            ]
        );

    private byte[] Request(string method, string address, string headers, byte[] body) =>
        [
            .. Encoding.UTF8.GetBytes(
                $"{method} {address} HTTP/1.1\r\nHost: {Site.Browser.BaseAddress!.Authority}\r\nConnection: close\r\n{headers}"
                    + (body.Length > 0 ? $"Content-Length: {body.Length}\r\n\r\n" : "\r\n")
            ),
            .. body,
        ];

    // Sent as it is, so that nothing mends it on the way.
    private async Task<string?> FaultAsync(byte[] request, string ending)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        patience.CancelAfter(Patience);
        using var client = new TcpClient();
        try
        {
            await client.ConnectAsync("127.0.0.1", Site.Browser.BaseAddress!.Port, patience.Token);
            var stream = client.GetStream();
            await stream.WriteAsync(request, patience.Token);
            using var answer = new MemoryStream();
            var read = stream.CopyToAsync(answer, patience.Token);
            if (await Task.WhenAny(read, Task.Delay(RestAwaited, patience.Token)) != read)
                client.Client.Shutdown(SocketShutdown.Send);
            await read;
            return FaultOf(Encoding.UTF8.GetString(answer.ToArray()));
        }
        catch (OperationCanceledException)
        {
            return "It was not answered.";
        }
        // What is no HTTP at all is hung up on.
        catch (IOException)
        {
            return null;
        }
    }

    private static string? FaultOf(string answer) =>
        answer.Length == 0 ? null
        : !answer.StartsWith("HTTP/1.1 ", StringComparison.Ordinal)
            ? $"It is no answer: {answer[..Math.Min(200, answer.Length)]}"
        // 505 is HTTP's own word for a version that does not exist.
        : (answer[9] == '5' && !answer.StartsWith("HTTP/1.1 505", StringComparison.Ordinal))
        || answer.Contains("   at Alburnum", StringComparison.Ordinal)
            ? answer[..Math.Min(2000, answer.Length)]
        : null;
}
