using System.Globalization;
using ProcScript.Analysis;
using ProcScript.Analysis.Settings;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary>Where values of settings come from, as it is printed.</summary>
/// <param name="settings">The settings.</param>
/// <param name="paths">How files are named to the user.</param>
internal sealed class OriginWords(CheckSettings settings, ScreenPaths paths)
{
    /// <summary><c>procscript.json:4</c>, <c>built in</c> or <c>the command line</c>.</summary>
    public string Of(SettingOrigin origin) =>
        FileOf(origin) is var (file, line) ? string.Create(CultureInfo.InvariantCulture, $"{file}:{line}") : origin.Words;

    /// <summary>The file and the line, counted from 1; null where it comes from no file.</summary>
    public (string File, int Line)? FileOf(SettingOrigin origin) => origin.Place is { } place
        ? (paths.Of(place.Path), settings.Files.First(file => file.Path == place.Path).LineAt(place.Span.Start) + 1)
        : null;
}
