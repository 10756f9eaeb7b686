using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Cli.Verbs;

/// <summary><c>config</c>: prints what holds for a path, and where each value comes from.</summary>
internal static class ConfigVerb
{
    /// <summary>Reads the settings and prints them.</summary>
    public static ExitCode Run(ConfigRequest request, Surroundings around)
    {
        var selection = SourceSelection.Find(request.Input, around.CurrentFolder);
        var settings = request.Settings.Read(new DiskSourceStore(selection, around.OpenInput));
        var paths = new ScreenPaths(selection, around.CurrentFolder);
        var chosen = settings.For(PathInLibrary(selection, request.Input.Paths[0], around.CurrentFolder));
        var origins = new OriginWords(settings, paths);
        if (request.IsForPrograms)
        {
            SettingsDocument.Write(around.Output, request.Input.Paths[0].Replace('\\', '/'), chosen, origins);
        }
        else
        {
            var terminal = Terminal.For(around, request.Colour);
            PrintFindings(settings, terminal, paths);
            Print(chosen, origins, terminal);
        }

        return settings.Findings.Any(finding => settings.For(finding.Primary.Path).SeverityOf(finding.Rule) == Severity.Error)
            ? ExitCode.Findings
            : ExitCode.Clean;
    }

    /// <summary>A folder stands for a file in it that no override names by itself.</summary>
    private static string PathInLibrary(SourceSelection selection, string typed, string currentFolder)
    {
        var full = Path.GetFullPath(typed, currentFolder);
        var path = Path.GetRelativePath(selection.Root, Directory.Exists(full) ? Path.Combine(full, ".proc") : full);
        return path.Replace(Path.DirectorySeparatorChar, '/');
    }

    private static void PrintFindings(CheckSettings settings, Terminal terminal, ScreenPaths paths)
    {
        FindingPrinter printer = new(terminal, path => settings.Files.FirstOrDefault(file => file.Path == path), paths);
        foreach (var finding in settings.Findings)
        {
            if (settings.For(finding.Primary.Path).SeverityOf(finding.Rule) is { } severity)
            {
                printer.Print(new ReportedFinding(finding, severity));
            }
        }
    }

    private static void Print(PathSettings chosen, OriginWords origins, Terminal terminal)
    {
        var values = SettingsTable.All.Select(setting =>
        {
            var (value, origin) = chosen.Look(setting);
            return (setting.Key, Value: setting.Print(value), Origin: origins.Of(origin));
        });
        var severities = RuleCatalog.All.Select(rule =>
        {
            var (severity, origin) = chosen.LookSeverity(rule.Info);
            return (Key: $"{rule.Info.Code} {rule.Info.Name}", Value: SeverityChoice.WordFor(severity), Origin: origins.Of(origin));
        });
        Print([.. values], terminal);
        terminal.WriteLine();
        Print([.. severities], terminal);
    }

    private static void Print(List<(string Key, string Value, string Origin)> rows, Terminal terminal)
    {
        var (keys, values) = (rows.Max(row => row.Key.Length), rows.Max(row => row.Value.Length));
        foreach (var (key, value, origin) in rows)
        {
            terminal.WriteLine(
                new Piece(key.PadRight(keys + 2), Ink.Strong),
                new Piece(PrintableText.Of(value).PadRight(values + 2)),
                new Piece(PrintableText.Of(origin)));
        }
    }
}
