using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace ProcScript.Cli.Tests.Output;

/// <summary>What stands in a source, or is the name of one, commands neither a build server nor a terminal, in whatever form it is told.</summary>
public sealed class LogCommandTests : IDisposable
{
    private const string Command = "##vso[task.setvariable variable=X]1 ##[error]x ##teamcity[a]";

    private readonly TemporaryFolder _disk = new();

    public void Dispose() => _disk.Dispose();

    [Theory]
    [InlineData("text")]
    [InlineData("json")]
    [InlineData("sarif")]
    [InlineData("github")]
    [InlineData("gitlab")]
    [InlineData("junit")]
    public async Task No_form_of_a_check_has_a_command_in_it(string format)
    {
        _disk.With("a.proc", $"tool lever \"{Command}\u001B[31m\u009B31m\"\ntool lever \"::error ::x\"\n::error file=a::x {Command}\n  ::set-output name=a::b\n")
            .With("use.proc", $"use \"{Command}.proc\"\nuse \"\u001B[2J.proc\"\n");
        if (!OperatingSystem.IsWindows())
        {
            _disk.With("::error ##[x]\u001B[1m.proc", "tool }\n");
        }

        var run = await CliRun.AtAsync(_disk.Path, "check", ".", "--format", format);

        AssertHarmless(run.AssertNoBug().Output, isOwnCommand: format == "github");
        if (format == "junit")
        {
            Assert.Contains(Command, string.Concat(XDocument.Parse(run.Output).Descendants().Attributes().Select(one => one.Value)), StringComparison.Ordinal);
        }
        else if (format is not ("text" or "github"))
        {
            using var json = JsonDocument.Parse(run.Output);
            Assert.Contains(Command, Texts(json.RootElement), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("fix .")]
    [InlineData("fix . --needs-look --diff", true)]
    [InlineData("build . -o packs")]
    [InlineData("model .")]
    [InlineData("suppressions .")]
    [InlineData("suppressions . --format json")]
    [InlineData("check ##vso[x]\u001B[31m")]
    [InlineData("explain ##vso[x]\u001B[31m")]
    [InlineData("baseline write . -o b.json")]
    public async Task No_other_command_hands_one_on(string arguments, bool isPatch = false)
    {
        _disk.With("a.proc", $"tool lever \"{Command}\"\n// proc: allow PRC5001 because \"::error x\"\ntool lever \"{Command}\"\nmachine m \"{Command}\" {{ part a \"{Command}\" {{ }} }}\n"
            + $"procedure p \"{Command}\" on m {{ goal remove b  stage \"{Command}\" {{ remove b }} }}\n");

        var run = await CliRun.AtAsync(_disk.Path, arguments.Split(' '));

        if (!isPatch)
        {
            AssertHarmless(run.AssertNoBug().Output + run.Error, isOwnCommand: false);
        }
    }

    private static void AssertHarmless(string output, bool isOwnCommand)
    {
        Assert.DoesNotMatch(@"##\w*\[", output);
        Assert.DoesNotContain(output, letter => char.IsControl(letter) && letter != '\n');
        Assert.All(
            output.Split('\n').Where(line => Regex.IsMatch(line, @"^\s*::\w")),
            line => Assert.True(isOwnCommand && Regex.IsMatch(line, "^::(error|warning|notice) title=PRC"), line));
    }

    private static string Texts(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => string.Concat(element.EnumerateObject().Select(member => Texts(member.Value))),
        JsonValueKind.Array => string.Concat(element.EnumerateArray().Select(Texts)),
        JsonValueKind.String => element.GetString(),
        _ => "",
    } ?? "";
}
