using System.CommandLine.Parsing;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using YamlDotNet.RepresentationModel;

namespace ProcScript.Cli.Tests.Packaging;

/// <summary>What build servers and hooks are given to copy: that it can be read, and that every command in it is one.</summary>
public sealed partial class ExampleTests
{
    /// <summary>Trims the native program, and is no part of it.</summary>
    private const string BuildsOnly = "Microsoft.NET.ILLink.Tasks";

    private static readonly string[] Documents = ["README.md", "DEVELOPERS.md", "src/packaging/README.md", "src/packaging/Containerfile"];

    public static TheoryData<string> Files =>
    [
        ".pre-commit-hooks.yaml",
        .. Directory.EnumerateFiles(Path.Combine(Checkout.Root, "src/packaging/examples"), "*.y*ml")
            .Select(file => Path.GetRelativePath(Checkout.Root, file))
            .Order(StringComparer.Ordinal),
    ];

    [Theory]
    [MemberData(nameof(Files))]
    public void An_example_is_well_formed_and_its_commands_are_commands(string file)
    {
        var yaml = new YamlStream();
        using (StreamReader reader = new(Path.Combine(Checkout.Root, file)))
        {
            yaml.Load(reader);
        }

        var texts = Assert.Single(yaml.Documents).AllNodes.OfType<YamlScalarNode>().Select(node => node.Value ?? "").ToList();
        var commands = texts.SelectMany(CommandsIn).ToList();

        Assert.True(commands.Count > 0 || file.Contains("pre-commit-config", StringComparison.Ordinal), $"{file} has no command.");
        Assert.All(commands, AssertIsCommand);
    }

    [Fact]
    public void Every_command_that_a_document_shows_is_a_command()
    {
        var commands = Documents.SelectMany(document => File.ReadLines(Path.Combine(Checkout.Root, document))).SelectMany(CommandsIn).ToList();

        Assert.NotEmpty(commands);
        Assert.All(commands, AssertIsCommand);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void What_is_installed_comes_in_one_version_from_the_shop_itself(string file)
    {
        var installs = File.ReadLines(Path.Combine(Checkout.Root, file)).Where(line => line.Contains("tool install", StringComparison.Ordinal)).ToList();

        Assert.True(installs.Count > 0 || file.Contains("pre-commit", StringComparison.Ordinal), $"{file} installs nothing.");
        Assert.All(installs, line => Assert.EndsWith($" procscript --version {ProductVersion.Text} --configfile procscript.nuget.config", line, StringComparison.Ordinal));
        var config = XDocument.Load(Path.Combine(Checkout.Root, "src/packaging/examples/procscript.nuget.config"));
        Assert.Equal(["clear", "add"], config.Root!.Element("packageSources")!.Elements().Select(element => element.Name.LocalName));
    }

    [Fact]
    public void Every_package_that_is_handed_out_has_its_notice()
    {
        using var locked = JsonDocument.Parse(File.ReadAllText(Path.Combine(Checkout.Root, "src/ProcScript.Cli/packages.lock.json")));
        var packages = locked.RootElement.GetProperty("dependencies").GetProperty("net10.0").EnumerateObject()
            .Where(one => one.Value.GetProperty("type").GetString() != "Project" && one.Name != BuildsOnly)
            .Select(one => $"| {one.Name} | {one.Value.GetProperty("resolved").GetString()} |")
            .Order(StringComparer.Ordinal)
            .ToList();
        var rows = File.ReadLines(Path.Combine(Checkout.Root, "src/packaging/THIRD-PARTY-NOTICES.md"))
            .Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| Package", StringComparison.Ordinal))
            .ToList();

        Assert.NotEmpty(packages);
        Assert.Equal(packages, rows.Where(row => !row.StartsWith("| .NET ", StringComparison.Ordinal)).Select(row => string.Join('|', row.Split('|').Take(3)) + "|").Order(StringComparer.Ordinal));
        Assert.All(rows, row => Assert.Contains(row.Split('|')[3].Trim(), new[] { "MIT", "BSD-2-Clause", "BSD-3-Clause", "Apache-2.0" }));
    }

    [Fact]
    public void Every_hook_gets_the_whole_library_and_no_file_names()
    {
        var yaml = new YamlStream();
        using (StreamReader reader = new(Path.Combine(Checkout.Root, ".pre-commit-hooks.yaml")))
        {
            yaml.Load(reader);
        }

        var hooks = ((YamlSequenceNode)yaml.Documents[0].RootNode).Children.Cast<YamlMappingNode>().ToList();

        Assert.NotEmpty(hooks);
        Assert.All(hooks, hook =>
        {
            Assert.Equal("false", ((YamlScalarNode)hook["pass_filenames"]).Value);
            Assert.EndsWith(" .", ((YamlScalarNode)hook["entry"]).Value, StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("procscript chek x")]
    [InlineData("procscript check . --no-such")]
    public void A_command_that_is_none_is_found(string line) =>
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertIsCommand(Assert.Single(CommandsIn(line))));

    private static void AssertIsCommand(string command)
    {
        var root = CommandLine.Root(InMemory.Surroundings(Checkout.Root, TextWriter.Null));
        var complaint = CommandLine.Complaint(root.Parse(CommandLineParser.SplitCommandLine(command).ToList()));
        Assert.True(complaint is null, $"'procscript {command}': {complaint}");
    }

    /// <summary>What follows the program's name where it is called: up to what the shell takes for itself, a closing mark, or an aligned remark.</summary>
    private static IEnumerable<string> CommandsIn(string text) => Call().Matches(text).Select(match => match.Groups["arguments"].Value.Trim());

    [GeneratedRegex(@"(?<![\w./:'-]|\btool install [^\n]*)procscript (?<arguments>(?:[a-z]+|--[a-z]+)\b[^\n|<>`'"",)]*?)(?=$|\n| *[|<>`'"",)]|   )")]
    private static partial Regex Call();
}
