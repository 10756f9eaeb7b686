using System.Text.Json.Nodes;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

public sealed class DiagnosticTests : IDisposable
{
    private readonly TemporaryLibrary _library = Sample.Library();

    private static JsonObject Pulls => new()
    {
        ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject() },
    };

    private string Job => EditorClient.UriOf(_library["fan/motor.proc"]);

    public void Dispose() => _library.Dispose();

    [Fact]
    public async Task A_mistake_is_told_with_its_reasons_and_taken_back_when_it_is_mended()
    {
        await using var client = await EditorClient.StartAsync(_library.Path, new JsonObject
        {
            ["textDocument"] = new JsonObject { ["publishDiagnostics"] = new JsonObject { ["codeDescriptionSupport"] = true } },
        });
        var document = EditorDocument.Open(client, Job, Sample.Job);
        Assert.Empty(await document.DiagnosticsAsync());

        document.Replace("    undo hub_bolt\n", "");
        var finding = Assert.Single(await document.DiagnosticsAsync())!;

        Assert.Equal("PRC3001", finding["code"]!.GetValue<string>());
        Assert.Equal("remove", document.Slice(finding["range"]!));
        Assert.Equal(1, finding["severity"]!.GetValue<int>());
        Assert.Equal("removed-while-held", finding["data"]!["rule"]!.GetValue<string>());
        Assert.Contains("`hub_bolt`", finding["message"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.EndsWith("/fan/machine.proc", finding["relatedInformation"]![0]!["location"]!["uri"]!.GetValue<string>(), StringComparison.Ordinal);
        var page = new Uri(finding["codeDescription"]!["href"]!.GetValue<string>()).LocalPath;
        Assert.StartsWith("# PRC3001 removed-while-held", await File.ReadAllTextAsync(page, TestContext.Current.CancellationToken), StringComparison.Ordinal);

        document.Replace("    remove wheel", "    undo hub_bolt\n    remove wheel");
        Assert.Empty(await document.DiagnosticsAsync());
    }

    [Fact]
    public async Task A_change_in_one_file_tells_on_another_and_closing_goes_back_to_the_disk()
    {
        await using var client = await EditorClient.StartAsync(_library.Path);
        var machine = EditorDocument.Open(client, EditorClient.UriOf(_library["fan/machine.proc"]), Sample.Machine);
        Assert.Empty(await machine.DiagnosticsAsync());

        machine.Replace("as hub_bolt", "as hub_nut");
        var told = await client.NextAsync(message => message["params"]?["uri"]?.GetValue<string>() == Job);
        Assert.NotEmpty(told["params"]!["diagnostics"]!.AsArray());

        machine.Close();
        told = await client.NextAsync(message => message["params"]?["uri"]?.GetValue<string>() == Job);
        Assert.Equal("[]", told["params"]!["diagnostics"]!.ToJsonString());
    }

    [Fact]
    public async Task A_client_that_asks_is_not_told_and_hears_what_did_not_change()
    {
        await using var client = await EditorClient.StartAsync(_library.Path, Pulls);
        var document = EditorDocument.Open(client, Job, Sample.Job.Replace("    undo hub_bolt\n", "", StringComparison.Ordinal));

        var first = await client.RequestAsync("textDocument/diagnostic", new JsonObject { ["textDocument"] = document.Identifier });
        var id = first!["resultId"]!.GetValue<string>();
        var second = await client.RequestAsync("textDocument/diagnostic", new JsonObject { ["textDocument"] = document.Identifier, ["previousResultId"] = id });
        var all = await client.RequestAsync("workspace/diagnostic", new JsonObject { ["previousResultIds"] = new JsonArray() });

        Assert.True(client.Capabilities["diagnosticProvider"]!["workspaceDiagnostics"]!.GetValue<bool>());
        Assert.Equal("PRC3001", first["items"]![0]!["code"]!.GetValue<string>());
        Assert.Equal("unchanged", second!["kind"]!.GetValue<string>());
        Assert.Null(second["items"]);
        var report = Assert.Single(all!["items"]!.AsArray())!;
        Assert.Equal(1, report["version"]!.GetValue<int>());
        Assert.Equal(id, report["resultId"]!.GetValue<string>());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            using var soon = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
            soon.CancelAfter(50);
            await client.NextAsync(message => message["method"]?.GetValue<string>() == "textDocument/publishDiagnostics").WaitAsync(soon.Token);
        });
    }

    [Fact]
    public async Task A_document_on_no_disk_is_checked_by_itself()
    {
        await using var client = await EditorClient.StartAsync(null);
        var document = EditorDocument.Open(client, "untitled:Untitled-1", "tool a { size 3 bar }");

        Assert.Equal("PRC1202", Assert.Single(await document.DiagnosticsAsync())!["code"]!.GetValue<string>());
    }

    [Fact]
    public async Task A_file_that_changes_on_the_disk_is_read_again()
    {
        await using var client = await EditorClient.StartAsync(_library.Path);
        var document = EditorDocument.Open(client, Job, Sample.Job);
        Assert.Empty(await document.DiagnosticsAsync());

        _library.With("fan/machine.proc", Sample.Machine.Replace("hub_bolt", "hub_nut", StringComparison.Ordinal));
        client.Notify("workspace/didChangeWatchedFiles", new JsonObject
        {
            ["changes"] = new JsonArray(new JsonObject { ["uri"] = EditorClient.UriOf(_library["fan/machine.proc"]), ["type"] = 2 }),
        });

        Assert.Equal("PRC1101", (await document.DiagnosticsAsync())[0]!["code"]!.GetValue<string>());
    }
}
