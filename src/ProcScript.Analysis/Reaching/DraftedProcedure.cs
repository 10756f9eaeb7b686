using ProcScript.Analysis.Drafting;
using ProcScript.Model.Figures;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Reaching;

/// <summary>Makes a file of a procedure that was made up, and proves it as it would stand in the library.</summary>
public static class DraftedProcedure
{
    /// <summary>The text of the file.</summary>
    /// <param name="store">The library.</param>
    /// <param name="settings">What the shop has chosen.</param>
    /// <param name="path">The path of the file, which is not there yet.</param>
    /// <param name="procedure">The procedure by itself.</param>
    /// <param name="uses">The files that it names things of.</param>
    /// <exception cref="ReachRefusedException">It would not be proven there.</exception>
    public static string File(ISourceStore store, CheckSettings settings, string path, string procedure, IEnumerable<string> uses)
    {
        ArgumentNullException.ThrowIfNull(settings);
        var text = ProcedureText.File(path, uses, procedure);
        var report = LibraryCheck.Run(new With(store, path, text), settings);
        var errors = report.Findings.Where(reported => reported.Severity == Severity.Error && reported.Finding.Primary.Path == path).ToList();
        var own = report.Procedures.Where(one => one.Procedure.Declared.Path == path).ToList();
        return errors.Count == 0 && own.Count > 0 && own.TrueForAll(one => one.IsProven)
            ? text
            : throw new ReachRefusedException(
                $"what was found is not proven as a file of its own: {(errors.Count > 0 ? $"{errors[0].Finding.Rule.Code} {errors[0].Finding.Message}" : "it has no procedure")}. Nothing was written.");
    }

    /// <summary>A library with one more file.</summary>
    private sealed class With(ISourceStore store, string path, string text) : ISourceStore
    {
        public IReadOnlyList<string> Paths { get; } = [.. store.Paths.Append(path).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

        public bool IsWhole => store.IsWhole;

        public SourceReading Read(string asked) => asked == path ? new SourceReading(text, SourceOutcome.Read) : store.Read(asked);

        public FigureFile FindFigure(string asked) => store.FindFigure(asked);
    }
}
