using System.Text;
using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

public sealed class LifecycleTests
{
    private const int NotInitialized = -32002;
    private const int InvalidRequest = -32600;
    private const int MethodNotFound = -32601;
    private const int InvalidParams = -32602;
    private const int ParseError = -32700;
    private const int RequestCancelled = -32800;

    [Fact]
    public async Task A_client_that_takes_its_leave_gets_exit_code_0()
    {
        await using var client = await EditorClient.StartAsync(null, inProcess: false);

        Assert.Null(await client.RequestAsync("shutdown", null));
        Assert.Equal(InvalidRequest, await client.ErrorAsync("shutdown", null));
        client.Notify("exit", null);

        Assert.Equal(0, await client.EndAsync());
        Assert.Equal("", await client.Process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    [Theory]
    [InlineData("rootUri")]
    [InlineData("rootPath")]
    public async Task An_older_client_names_its_one_folder_by_address_or_path(string field)
    {
        using var library = Sample.Library();
        await using var client = EditorClient.StartRaw();
        var parameters = new JsonObject { ["processId"] = null, ["rootUri"] = null, ["capabilities"] = new JsonObject() };
        parameters[field] = field == "rootUri" ? EditorClient.UriOf(library.Path) : library.Path;

        await client.RequestAsync("initialize", parameters);
        client.Notify("initialized", new JsonObject());
        var found = await client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "motor" });

        Assert.NotEmpty(found!.AsArray());
    }

    [Fact]
    public async Task A_request_that_is_taken_back_is_answered_as_such_and_the_next_one_is_served()
    {
        using var library = Sample.Library();
        await using var client = await EditorClient.StartAsync(library.Path);

        var asked = Enumerable.Range(0, 20).Select(_ => client.Send("workspace/symbol", new JsonObject { ["query"] = "motor" })).ToList();
        foreach (var (id, _) in asked)
        {
            client.Notify("$/cancelRequest", new JsonObject { ["id"] = id });
        }

        foreach (var (_, answer) in asked)
        {
            var told = await answer.WaitAsync(TestContext.Current.CancellationToken);
            Assert.True(told["error"] is null || told["error"]!["code"]!.GetValue<int>() == RequestCancelled, told.ToJsonString());
        }

        Assert.NotEmpty((await client.RequestAsync("workspace/symbol", new JsonObject { ["query"] = "motor" }))!.AsArray());
    }

    [Fact]
    public async Task A_client_that_leaves_without_a_word_gets_exit_code_1()
    {
        await using var client = await EditorClient.StartAsync(null, inProcess: false);

        client.Notify("exit", null);

        Assert.Equal(1, await client.EndAsync());
    }

    [Fact]
    public async Task A_client_that_dies_ends_the_server()
    {
        await using var client = await EditorClient.StartAsync(null, inProcess: false);

        client.Process.StandardInput.Close();

        Assert.Equal(1, await client.EndAsync());
        Assert.Equal("", await client.Process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task What_comes_before_initialize_is_refused_and_initialize_comes_once()
    {
        await using var client = EditorClient.StartRaw();

        Assert.Equal(NotInitialized, await client.ErrorAsync("shutdown", null));
        await client.InitializeAsync(null);
        Assert.Equal(InvalidRequest, await client.ErrorAsync("initialize", new JsonObject { ["processId"] = null, ["rootUri"] = null, ["capabilities"] = new JsonObject() }));
    }

    [Theory]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":")]
    [InlineData("not json at all")]
    [InlineData("[]")]
    [InlineData("{}")]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":7}")]
    [InlineData("")]
    [InlineData("\0")]
    [InlineData("[{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"shutdown\"}]")]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"shutdown\"}}}")]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":{},\"method\":\"shutdown\"}")]
    [InlineData("{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":3}")]
    public async Task A_message_that_cannot_be_understood_gets_an_error_and_the_server_lives(string body)
    {
        await using var client = await EditorClient.StartAsync(null);

        client.SendBytes($"Content-Length: {body.Length}\r\n\r\n{body}");
        var error = await client.NextAsync(message => message["error"] is not null);

        Assert.Contains(error["error"]!["code"]!.GetValue<int>(), new[] { ParseError, InvalidRequest });
        Assert.Null(error["id"]);
        Assert.Null(await client.RequestAsync("shutdown", null));
    }

    [Fact]
    public async Task A_message_that_is_no_UTF8_gets_an_error_and_the_server_lives()
    {
        await using var client = await EditorClient.StartAsync(null);
        byte[] body = [.. "{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\""u8, 0xC3, 0x28, 0xFF, .. "\"}"u8];

        client.SendBytes([.. Encoding.ASCII.GetBytes($"Content-Length: {body.Length}\r\n\r\n"), .. body]);
        var error = await client.NextAsync(message => message["error"] is not null);

        Assert.Contains(error["error"]!["code"]!.GetValue<int>(), new[] { ParseError, InvalidRequest });
        Assert.Null(await client.RequestAsync("shutdown", null));
    }

    [Fact]
    public async Task A_length_that_is_too_short_costs_that_message_and_no_other()
    {
        await using var client = await EditorClient.StartAsync(null);

        // What is left of the body runs into the next header, which has its length all the same.
        client.SendBytes("Content-Length: 10\r\n\r\n{\"jsonrpc\":\"2.0\",\"id\":7,\"method\":\"shutdown\"}\r\n");
        Assert.NotNull(await client.NextAsync(message => message["error"] is not null));

        Assert.Null(await client.RequestAsync("shutdown", null));
    }

    [Theory]
    [InlineData("Content-Length: many\r\n\r\n")]
    [InlineData("Content-Length: -5\r\n\r\n")]
    [InlineData("Something: else\r\n\r\n")]
    [InlineData("\r\n\r\n")]
    [InlineData("Content-Length: 99999999999999999999\r\n\r\n")]
    [InlineData("Content-Length: 2147483647\r\n\r\n")]
    [InlineData("\u0001\u0002 \u00e9\u20ac garbage \n\n GET / HTTP/1.1\r\n\r\n")]
    public async Task A_header_that_cannot_be_understood_gets_an_error_and_the_server_lives(string header)
    {
        await using var client = await EditorClient.StartAsync(null);

        client.SendBytes(header);
        var error = await client.NextAsync(message => message["error"] is not null);

        Assert.Contains(error["error"]!["code"]!.GetValue<int>(), new[] { ParseError, InvalidRequest });
        Assert.Null(await client.RequestAsync("shutdown", null));
    }

    [Fact]
    public async Task A_message_that_ends_in_the_middle_ends_the_server_without_a_word()
    {
        await using var client = await EditorClient.StartAsync(null, inProcess: false);

        client.SendBytes("Content-Length: 1000\r\n\r\n{\"jsonrpc\"");
        client.Process.StandardInput.Close();

        Assert.Equal(1, await client.EndAsync());
        Assert.Equal("", await client.Process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    [Fact]
    public async Task Unknown_methods_and_wrong_parameters_get_their_errors()
    {
        await using var client = await EditorClient.StartAsync(null, new JsonObject { ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject() } });

        Assert.Equal(MethodNotFound, await client.ErrorAsync("textDocument/madeUp", new JsonObject()));
        Assert.Equal(InvalidParams, await client.ErrorAsync("textDocument/diagnostic", new JsonObject { ["textDocument"] = 3 }));
        Assert.Equal(InvalidParams, await client.ErrorAsync("textDocument/diagnostic", new JsonObject()));
        Assert.Equal(InvalidParams, await client.ErrorAsync("textDocument/diagnostic", null));
        client.Notify("textDocument/didChange", new JsonObject { ["textDocument"] = 3 });
        client.Notify("$/madeUp", new JsonObject());
        Assert.Null(await client.RequestAsync("shutdown", null));
    }

    [Theory]
    [InlineData("utf-16")]
    [InlineData("utf-8")]
    public async Task The_encoding_of_positions_is_agreed_on_and_kept(string encoding)
    {
        using var library = new TemporaryLibrary();
        await using var client = await EditorClient.StartAsync(library.Path, new JsonObject
        {
            ["general"] = new JsonObject { ["positionEncodings"] = new JsonArray(encoding) },
        });
        var document = EditorDocument.Open(client, EditorClient.UriOf(library["a.proc"]), "tool a \"🔧é\" { size 3 bar }\n");

        var range = (await document.DiagnosticsAsync())[0]!["range"]!;

        Assert.Equal(encoding, client.Capabilities["positionEncoding"]!.GetValue<string>());
        Assert.Equal(encoding == "utf-8" ? 23 : 20, range["start"]!["character"]!.GetValue<int>());
    }
}
