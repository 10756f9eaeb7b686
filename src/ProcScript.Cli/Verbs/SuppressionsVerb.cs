using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis.Reports;
using ProcScript.Analysis.Reports.Documents;
using ProcScript.Cli.Output;
using ProcScript.Cli.Sources;

namespace ProcScript.Cli.Verbs;

/// <summary><c>suppressions</c>: lists the comments that allow findings, and what came of them.</summary>
internal static class SuppressionsVerb
{
    /// <summary>Checks and lists.</summary>
    public static async Task<ExitCode> RunAsync(SuppressionsRequest request, Surroundings around, CancellationToken stop)
    {
        var library = await CheckedLibrary.JudgeAsync(request.Input, request.Settings.Read, around, stop);
        if (request.Json)
        {
            var document = new DocumentBuilder(library.Report, ProductVersion.Program).Suppressions();
            around.Output.Write(LogCommands.DisarmJson(JsonSerializer.Serialize(document, ReportJson.Published.SuppressionsDocument)) + "\n");
        }
        else
        {
            Print(library, Terminal.For(around, request.Colour), stop);
        }

        return library.HasUnreadableInput ? ExitCode.Usage : ExitCode.Clean;
    }

    private static void Print(CheckedLibrary library, Terminal terminal, CancellationToken stop)
    {
        foreach (var suppression in library.Report.Suppressions)
        {
            stop.ThrowIfCancellationRequested();
            var (line, column) = library.Report.TextOf(suppression.Path)!.PositionAt(suppression.Comment.Span.Start);
            var rule = suppression.Rule is { } known ? $"{known.Code} {known.Name}" : PrintableText.Of(suppression.Comment.Rule);
            terminal.WriteLine(
                new Piece(string.Create(CultureInfo.InvariantCulture, $"{PrintableText.Of(library.ScreenNameOf(suppression.Path))}:{line + 1}:{column + 1}: ")),
                new Piece(rule, Ink.Strong),
                new Piece($", {State(suppression.State)}{Until(suppression)}: {Reason(suppression)}"));
        }

        terminal.WriteLine(new Piece(Summary(library)));
    }

    private static string Summary(CheckedLibrary library)
    {
        var states = library.Report.Suppressions.CountBy(suppression => suppression.State).OrderBy(state => state.Key).Select(state => $"{state.Value} {State(state.Key)}");
        var all = Counted.Of(library.Report.Suppressions.Length, "comment");
        var which = string.Join(", ", states);
        return $"{all} in {Counted.Of(library.FileCount, "file")}{(which.Length == 0 ? "" : $": {which}")}";
    }

    private static string State(SuppressionState state) => ReportWords.Of(state).Replace('-', ' ');

    private static string Until(ReportedSuppression suppression) =>
        suppression.Comment.Expiry?.Day is { } day ? string.Create(CultureInfo.InvariantCulture, $", until {day:yyyy-MM-dd}") : "";

    private static string Reason(ReportedSuppression suppression) =>
        suppression.Comment.Reason is { } reason ? PrintableText.Of(reason) : "no reason given";
}

/// <summary>What <c>suppressions</c> is asked to do.</summary>
/// <param name="Input">What to read.</param>
/// <param name="Settings">What the shop has chosen.</param>
/// <param name="Json">Whether to list for programs.</param>
/// <param name="Colour">When to print in colour.</param>
internal sealed record SuppressionsRequest(InputRequest Input, SettingsRequest Settings, bool Json, ColourChoice Colour);
