using System.Net;
using System.Net.Http.Headers;
using System.Net.Http.Json;
using System.Net.Security;
using System.Net.Sockets;
using System.Text;
using System.Text.Json.Nodes;

namespace ProcScript.Floor.Tests;

/// <summary>What must not come in does not: it is told why, and written down.</summary>
public sealed class DoorTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_a_code_nothing_of_a_job_is_told()
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true);
        using var client = floor.Client();

        await RefusedAsync(floor, await client.GetAsync("/api/jobs", Stop), HttpStatusCode.Unauthorized, "not paired");
        await RefusedAsync(floor, await client.TellAsync("4711-seat_out", Telling.Done("a", 1)), HttpStatusCode.Unauthorized, "not paired");
        using var stream = await client.GetAsync("/api/stream", Stop);
        Assert.Equal(HttpStatusCode.Unauthorized, stream.StatusCode);
    }

    [Fact]
    public async Task A_code_works_once_and_the_tablet_stays_paired_when_the_server_starts_anew()
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true);
        using var client = floor.Client();
        using var other = floor.Client();
        var code = floor.Server.Pairing.Code;

        using var paired = await PairAsync(client, $"{code[..4]} {code[4..]}");
        var cookie = paired.Headers.GetValues("Set-Cookie").Single();
        using var again = await PairAsync(other, code);
        using var board = await client.GetAsync("/api/jobs", Stop);

        Assert.Equal(HttpStatusCode.OK, paired.StatusCode);
        Assert.Contains("httponly", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("samesite=strict", cookie, StringComparison.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.Forbidden, again.StatusCode);
        Assert.Equal(HttpStatusCode.OK, board.StatusCode);
        await using var next = await RunningFloor.StartAsync(pairing: true, folder: CopyOf(floor.Folder));
        using var request = new HttpRequestMessage(HttpMethod.Get, new Uri(next.Address, "/api/jobs"));
        request.Headers.Add("Cookie", cookie.Split(';')[0]);
        using var bare = new HttpClient(new SocketsHttpHandler { UseCookies = false });
        using var there = await bare.SendAsync(request, Stop);
        Assert.Equal(HttpStatusCode.OK, there.StatusCode);
    }

    [Fact]
    public async Task Who_guesses_codes_is_stopped_and_makes_the_code_another()
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true);
        using var client = floor.Client();
        var right = floor.Server.Pairing.Code;
        var wrong = right == "00000000" ? "00000001" : "00000000";

        for (var i = 0; i < Doors.PairingDesk.TriesInAMinute; i++)
        {
            using var tried = await PairAsync(client, wrong);
            Assert.Equal(HttpStatusCode.Forbidden, tried.StatusCode);
        }

        await RefusedAsync(floor, await PairAsync(client, right), HttpStatusCode.TooManyRequests, "Wait a minute");
        Doors.PairingDesk desk = new(TimeProvider.System);
        var code = desk.Code;
        for (var i = 0; i < Doors.PairingDesk.TriesOfACode; i++)
        {
            Assert.Throws<Doors.RefusedException>(() => desk.Try($"address {i}", "nothing"));
        }

        Assert.NotEqual(code, desk.Code);
    }

    [Theory]
    [InlineData("")]
    [InlineData("AAAAAAAAAAAA.9999999999.AAAA")]
    [InlineData("a.b")]
    [InlineData("....")]
    public async Task A_forged_token_is_none(string token)
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true);
        using var bare = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = floor.Address };
        using var request = new HttpRequestMessage(HttpMethod.Get, "/api/jobs");
        request.Headers.Add("Cookie", $"floor-0={token}");

        await RefusedAsync(floor, await bare.SendAsync(request, Stop), HttpStatusCode.Unauthorized, "not paired");
    }

    [Fact]
    public void A_token_that_was_changed_or_is_over_is_none()
    {
        MovedClock clock = new();
        Doors.SessionTokens tokens = new(new byte[32], clock);
        var token = tokens.Make();
        var parts = token.Split('.');

        Assert.NotNull(tokens.Who(token));
        Assert.Null(tokens.Who($"{parts[0]}.{long.Parse(parts[1], System.Globalization.CultureInfo.InvariantCulture) + 1}.{parts[2]}"));
        Assert.Null(new Doors.SessionTokens([.. Enumerable.Repeat((byte)1, 32)], clock).Who(token));
        clock.Now += Doors.SessionTokens.Life;
        Assert.Null(tokens.Who(token));
    }

    [Theory]
    [InlineData("evil.example")]
    [InlineData("evil.example:5290")]
    [InlineData("127.0.0.1.evil.example")]
    public async Task A_name_that_is_not_ours_is_refused(string host)
    {
        await using var floor = await RunningFloor.StartAsync();
        using var client = floor.Client();
        foreach (var path in new[] { "/", "/api/jobs" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, path);
            request.Headers.Host = host;
            await RefusedAsync(floor, await client.SendAsync(request, Stop), HttpStatusCode.MisdirectedRequest, "not called");
        }
    }

    [Theory]
    [InlineData("Origin", "https://evil.example")]
    [InlineData("Origin", "http://127.0.0.1:1")]
    [InlineData("Origin", "null")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_page_of_another_site_tells_nothing(string header, string value)
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        client.DefaultRequestHeaders.Add(header, value);

        await RefusedAsync(floor, await client.TellAsync(job, Telling.Done("a", 1)), HttpStatusCode.Forbidden, "another site");
        Assert.Single(await floor.EventsAsync(job));
    }

    [Fact]
    public async Task What_is_not_sent_as_json_is_refused()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        using var form = new StringContent("""{"events":[]}""", Encoding.UTF8, "text/plain");

        await RefusedAsync(floor, await client.PostAsync($"/api/jobs/{job}/events", form, Stop), HttpStatusCode.UnsupportedMediaType, "application/json");
    }

    [Theory]
    [InlineData("{", "not what belongs here")]
    [InlineData("[]", "not what belongs here")]
    [InlineData("null", "nothing in it")]
    [InlineData("""{"events":[]}""", "at least one")]
    [InlineData("""{"events":[],"more":1}""", "more")]
    [InlineData("""{"events":[{"id":"a","kind":"note","at":"2026-03-01T08:00:00Z","by":"x","text":"t","number":1}]}""", "number")]
    [InlineData("""{"events":[{"id":"a","kind":"note","at":"2026-03-01T08:00:00Z","by":"x","text":"t","logged":"2026-03-01T08:00:00Z"}]}""", "logged")]
    [InlineData("""{"events":[{"id":"a","kind":"no-such","at":"2026-03-01T08:00:00Z","by":"x"}]}""", "not what belongs here")]
    [InlineData("""{"events":[{"id":"a","kind":3,"at":"2026-03-01T08:00:00Z","by":"x"}]}""", "not what belongs here")]
    [InlineData("""{"events":[{"kind":"note","at":"2026-03-01T08:00:00Z","by":"x"}]}""", "id")]
    [InlineData("""{"events":[{"id":"a","kind":"note","at":"yesterday","by":"x"}]}""", "not what belongs here")]
    public async Task What_is_no_event_is_refused(string body, string why)
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        using var content = new StringContent(body, Encoding.UTF8, "application/json");

        await RefusedAsync(floor, await client.PostAsync($"/api/jobs/{job}/events", content, Stop), HttpStatusCode.BadRequest, why);
        Assert.Single(await floor.EventsAsync(job));
    }

    [Fact]
    public async Task What_is_too_long_is_refused()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();
        var long1 = Telling.Event("a", "note");
        long1["text"] = new string('x', 2 << 20);
        var nested = new StringContent(string.Concat(Enumerable.Repeat("{\"events\":", 2000)), Encoding.UTF8, "application/json");
        var many = Enumerable.Range(0, 201).Select(i => (JsonNode)Telling.Done($"e{i}", 1)).ToArray();

        await RefusedAsync(floor, await client.TellAsync(job, long1), HttpStatusCode.RequestEntityTooLarge, "too long");
        await RefusedAsync(floor, await client.PostAsync($"/api/jobs/{job}/events", nested, Stop), HttpStatusCode.BadRequest, "not what belongs here");
        await RefusedAsync(floor, await client.TellAsync(job, many), HttpStatusCode.BadRequest, "at most 200");
        Assert.Single(await floor.EventsAsync(job));
    }

    [Theory]
    [InlineData("/api/jobs/..%2f..%2fetc", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/%2e%2e%5c%2e%2e/now", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/.floor", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/4711-seat_out/photos/..%2fjournal.jsonl", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/4711-seat_out/photos/journal.jsonl", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/%3Cscript%3Ealert(1)%3C%2Fscript%3E", HttpStatusCode.BadRequest)]
    [InlineData("/api/jobs/no-such-job", HttpStatusCode.NotFound)]
    [InlineData("/api/jobs/4711-seat_out/events?after=-1", HttpStatusCode.BadRequest)]
    [InlineData("/api/no-such-thing", HttpStatusCode.NotFound)]
    [InlineData("/page/..%2fProcScript.Floor.dll", HttpStatusCode.NotFound)]
    public async Task A_path_leads_nowhere_else(string path, HttpStatusCode status)
    {
        await using var floor = await RunningFloor.StartAsync();
        await FloorJobs.OpenAsync(floor.Store);
        using var client = floor.Client();

        await RefusedAsync(floor, await client.GetAsync(path, Stop), status, "");
    }

    [Fact]
    public async Task A_method_that_is_none_is_refused()
    {
        await using var floor = await RunningFloor.StartAsync();
        using var client = floor.Client();

        await RefusedAsync(floor, await client.DeleteAsync("/api/jobs", Stop), HttpStatusCode.MethodNotAllowed, "DELETE");
    }

    [Slow]
    [Fact]
    public async Task Whoever_sends_a_body_drop_by_drop_is_let_go()
    {
        await using var floor = await RunningFloor.StartAsync();
        var job = await FloorJobs.OpenAsync(floor.Store);
        using TcpClient socket = new();
        await socket.ConnectAsync(IPAddress.Loopback, floor.Address.Port, Stop);
        await using var stream = socket.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"POST /api/jobs/{job}/events HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 5000\r\n\r\n{{"), Stop);

        var answer = await ReadAsync(stream);

        Assert.StartsWith("HTTP/1.1 408", answer, StringComparison.Ordinal);
        Assert.Contains(floor.Refused(), refused => (int)refused["status"]! == 408);
    }

    [Slow]
    [Fact]
    public async Task Whoever_never_ends_a_head_is_let_go()
    {
        await using var floor = await RunningFloor.StartAsync();
        using TcpClient socket = new();
        await socket.ConnectAsync(IPAddress.Loopback, floor.Address.Port, Stop);
        await using var stream = socket.GetStream();
        await stream.WriteAsync("GET /api/jobs HTTP/1.1\r\nHost: localhost\r\nX-Slow: "u8.ToArray(), Stop);

        await ReadAsync(stream);

        Assert.Contains(floor.Refused(), refused => ((string)refused["why"]!).Contains("timed out", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task What_is_written_down_stays_on_a_line_of_its_own()
    {
        await using var floor = await RunningFloor.StartAsync();
        using var client = floor.Client();

        using var answer = await client.GetAsync("/api/jobs/a%0A%7B%22why%22%3A%22forged%22%7D", Stop);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("/api/jobs/a%0A", (string)Assert.Single(floor.Refused())["what"]!, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_answer_forbids_what_is_foreign()
    {
        await using var floor = await RunningFloor.StartAsync();
        using var client = floor.Client();
        foreach (var path in new[] { "/", "/j/x", "/api/jobs", "/no-such", "/worker.js", "/page/app.js" })
        {
            using var answer = await client.GetAsync(path, Stop);
            var policy = answer.Headers.GetValues("Content-Security-Policy").Single();
            Assert.StartsWith("default-src 'none'", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("unsafe", policy, StringComparison.Ordinal);
            Assert.DoesNotContain("http", policy, StringComparison.Ordinal);
            Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
            Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
        }
    }

    [Fact]
    public async Task The_network_is_served_over_tls_alone()
    {
        await using var floor = await RunningFloor.StartAsync(pairing: true, lan: true);
        var port = floor.Address.Port;
        using TcpClient socket = new();
        await socket.ConnectAsync(IPAddress.Loopback, port, Stop);
        await using SslStream tls = new(socket.GetStream(), leaveInnerStreamOpen: false, (_, _, _, _) => true);
        await tls.AuthenticateAsClientAsync("localhost");
        using HttpClient plain = new() { BaseAddress = new Uri($"http://localhost:{port}") };
        using HttpClient client = new(new SocketsHttpHandler { SslOptions = { RemoteCertificateValidationCallback = (_, _, _, _) => true } }) { BaseAddress = new Uri($"https://localhost:{port}") };

        using var paired = await PairAsync(client, floor.Server.Pairing.Code);

        Assert.Equal(floor.Server.Certificate!.GetCertHashString(), tls.RemoteCertificate!.GetCertHashString());
        await Assert.ThrowsAnyAsync<HttpRequestException>(() => plain.GetAsync("/", Stop));
        Assert.Contains("secure", paired.Headers.GetValues("Set-Cookie").Single(), StringComparison.OrdinalIgnoreCase);
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(floor.Folder, ".floor", "certificate.key")));
        }
    }

    private static Task<HttpResponseMessage> PairAsync(HttpClient client, string code) => client.PostAsJsonAsync("/api/pair", new JsonObject { ["code"] = code }, Stop);

    private static string CopyOf(string folder)
    {
        var copy = Directory.CreateTempSubdirectory("floor-").FullName;
        Directory.CreateDirectory(Path.Combine(copy, ".floor"));
        File.Copy(Path.Combine(folder, ".floor", "pairing.key"), Path.Combine(copy, ".floor", "pairing.key"));
        return copy;
    }

    private static async Task<string> ReadAsync(NetworkStream stream)
    {
        using StreamReader reader = new(stream, Encoding.ASCII);
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Stop);
        patience.CancelAfter(TimeSpan.FromSeconds(60));
        try
        {
            return await reader.ReadToEndAsync(patience.Token);
        }
        catch (IOException)
        {
            return "";
        }
    }

    /// <summary>Whether it was refused with a problem that says why, and written down.</summary>
    private static async Task RefusedAsync(RunningFloor floor, HttpResponseMessage answer, HttpStatusCode status, string why)
    {
        using (answer)
        {
            Assert.Equal(status, answer.StatusCode);
            Assert.Equal(new MediaTypeHeaderValue("application/problem+json"), answer.Content.Headers.ContentType);
            var problem = (await answer.Content.ReadFromJsonAsync<JsonNode>(Stop))!;
            Assert.Equal((int)status, (int)problem["status"]!);
            Assert.Contains(why, (string)problem["detail"]!, StringComparison.Ordinal);
            var written = floor.Refused()[^1];
            Assert.Equal((int)status, (int)written["status"]!);
            Assert.Equal((string)problem["detail"]!, (string)written["why"]!);
            Assert.NotEqual("", (string)written["from"]!);
        }
    }

    private sealed class MovedClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 3, 1, 8, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
