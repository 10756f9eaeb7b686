using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>A client is told to ask again about a document when another file's change alters what it shows of it.</summary>
public sealed class RefreshTests : IDisposable
{
    private readonly TemporaryLibrary _library = Sample.Library();

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task Another_files_change_that_alters_what_is_shown_is_told()
    {
        await using var client = await EditorClient.StartAsync(_library.Path, Refreshing());
        var (job, machine) = await OpenAsync(client);

        // The job speaks of a joint that is there no more.
        machine.Replace("held by 1 m8x25 as hub_bolt", "held by 1 m8x25 as axle_bolt");
        await DiagnosticsAsync(client, machine);

        foreach (var method in (string[])["workspace/diagnostic/refresh", "workspace/semanticTokens/refresh", "workspace/inlayHint/refresh", "workspace/codeLens/refresh"])
        {
            Assert.NotNull(await client.NextAsync(message => message["method"]?.GetValue<string>() == method));
        }

        Assert.NotEqual("", await DiagnosticsAsync(client, job));
    }

    [Fact]
    public async Task A_change_of_the_document_alone_or_of_what_it_does_not_use_is_not_told()
    {
        await using var client = await EditorClient.StartAsync(_library.Path, Refreshing());
        var (job, machine) = await OpenAsync(client);
        var other = EditorDocument.Open(client, EditorClient.UriOf(_library["other.proc"]), "tool hammer \"hammer\"\n");
        await DiagnosticsAsync(client, other);

        job.Replace("    undo hub_bolt\n", "");
        await DiagnosticsAsync(client, job);
        other.Replace("hammer \"hammer\"", "saw \"saw\"");
        await DiagnosticsAsync(client, other);
        await DiagnosticsAsync(client, machine);

        Assert.Null(client.TryNext(IsRefresh));
    }

    [Fact]
    public async Task A_client_that_takes_no_such_requests_gets_none()
    {
        await using var client = await EditorClient.StartAsync(_library.Path, new JsonObject { ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject() } });
        var (_, machine) = await OpenAsync(client);

        machine.Replace("held by 1 m8x25 as hub_bolt", "held by 1 m8x25 as axle_bolt");
        await DiagnosticsAsync(client, machine);

        Assert.Null(client.TryNext(IsRefresh));
    }

    private async Task<(EditorDocument Job, EditorDocument Machine)> OpenAsync(EditorClient client)
    {
        var job = EditorDocument.Open(client, EditorClient.UriOf(_library["fan/motor.proc"]), Sample.Job);
        var machine = EditorDocument.Open(client, EditorClient.UriOf(_library["fan/machine.proc"]), Sample.Machine);
        Assert.Equal("[]", await DiagnosticsAsync(client, job));
        return (job, machine);
    }

    private static async Task<string> DiagnosticsAsync(EditorClient client, EditorDocument document) =>
        (await client.RequestAsync("textDocument/diagnostic", new JsonObject { ["textDocument"] = document.Identifier }))!["items"]!.ToJsonString();

    private static bool IsRefresh(JsonNode message) => message["method"]?.GetValue<string>().EndsWith("/refresh", StringComparison.Ordinal) == true;

    private static JsonObject Refreshing()
    {
        static JsonObject Supported() => new() { ["refreshSupport"] = true };
        return new JsonObject
        {
            ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject() },
            ["workspace"] = new JsonObject
            {
                ["diagnostics"] = Supported(),
                ["semanticTokens"] = Supported(),
                ["inlayHint"] = Supported(),
                ["codeLens"] = Supported(),
            },
        };
    }
}
