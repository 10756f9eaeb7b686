using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ProcScript.LanguageServer.Tests.Clients;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests;

/// <summary>The editor and the command line say the same of the same files.</summary>
public sealed partial class SameAsCheckTests
{
    [Fact]
    public async Task The_editor_is_told_what_check_prints()
    {
        using var library = Sample.Library()
            .With("fan/machine.proc", Sample.Machine.Replace("verify", "// verify", StringComparison.Ordinal))
            .With("fan/motor.proc", Sample.Job.Replace("    undo hub_bolt\n", "", StringComparison.Ordinal).Replace("unplug", "undo", StringComparison.Ordinal))
            .With("fan/allowed.proc", """
                // proc: allow unexpected-text until 2020-01-31 because "It is over."
                }
                // proc: allow unexpected-text until 2999-12-31 because "It is not."
                }
                // proc: allow unexpected-text until summer because "Nobody knows."
                }
                // proc: allow unexpected-text because "There is nothing."

                """)
            .With("fan/broken.proc", "use \"machine.proc\"\nprocedure p on fan { goal remove motor stage \"x\" { undo nothing }\nfastener b { torque 3 bar }");
        var printed = await SameAsync(library);

        Assert.True(printed.Count > 4, string.Join("\n", printed));
        Assert.All(new[] { "PRC7004", "PRC7005" }, code => Assert.Contains(printed, line => line.Contains(code, StringComparison.Ordinal)));
        Assert.DoesNotContain(printed, line => line.Contains("PRC7002", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Where_all_is_understood_a_comment_that_silences_nothing_is_told_too()
    {
        using var library = Sample.Library().With("fan/allowed.proc", "// proc: allow no-tool because \"There is nothing.\"\ntool rule \"steel rule\"\n");

        Assert.Contains(await SameAsync(library), line => line.Contains("PRC7002", StringComparison.Ordinal));
    }

    /// <summary>What check prints, which must be what the editor is told.</summary>
    private static async Task<List<string>> SameAsync(TemporaryLibrary library)
    {
        await using var client = await EditorClient.StartAsync(library.Path, new JsonObject { ["textDocument"] = new JsonObject { ["diagnostic"] = new JsonObject() } });

        var told = (await client.RequestAsync("workspace/diagnostic", new JsonObject { ["previousResultIds"] = new JsonArray() }))!["items"]!.AsArray()
            .SelectMany(report => report!["items"]!.AsArray().Select(one => Line(library, report["uri"]!.GetValue<string>(), one!)))
            .Order(StringComparer.Ordinal);

        var printed = (await CheckAsync(library.Path)).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(printed, told);
        return printed;
    }

    private static string Line(TemporaryLibrary library, string uri, JsonNode diagnostic)
    {
        var start = diagnostic["range"]!["start"]!;
        var path = Path.GetRelativePath(library.Path, new Uri(uri).LocalPath).Replace('\\', '/');
        var severity = diagnostic["severity"]!.GetValue<int>() switch { 1 => "error", 2 => "warning", _ => "hint" };
        return string.Create(CultureInfo.InvariantCulture, $"{severity} {diagnostic["code"]} {diagnostic["message"]!.GetValue<string>().Split('\n')[0]} at {path}:{start["line"]!.GetValue<int>() + 1}:{start["character"]!.GetValue<int>() + 1}");
    }

    private static async Task<List<string>> CheckAsync(string folder)
    {
        ProcessStartInfo start = new("dotnet", [Path.Combine(AppContext.BaseDirectory, "procscript.dll"), "check", "."])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            StandardOutputEncoding = Encoding.UTF8,
        };
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        return [.. Printed().Matches(output).Select(match => $"{match.Groups["severity"]} {match.Groups["code"]} {match.Groups["message"]} at {match.Groups["place"]}")];
    }

    [GeneratedRegex(@"^(?<severity>error|warning|hint) (?<code>PRC\d{4}) [a-z-]+: (?<message>.*)\n *--> (?<place>.*)$", RegexOptions.Multiline)]
    private static partial Regex Printed();
}
