using System.Collections.Immutable;
using ProcScript.Analysis.Rules;
using ProcScript.Analysis.Settings;
using ProcScript.Analysis.Whole;
using ProcScript.Model;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Checking;

/// <summary>
/// Lets the rules judge a library as a whole. They speak only where it is known to be whole: its root has settings, all below the root was
/// asked about, and all of it is checked. Of a part nobody can say what is used nowhere.
/// </summary>
internal static class WholeLibraryCheck
{
    private static readonly ImmutableArray<LibraryRule> Rules = [.. AnalysisRules.All.OfType<LibraryRule>()];

    /// <summary>Whether the rules speak of a library.</summary>
    public static bool Speaks(Library library, CheckSettings settings, CheckScope scope) =>
        library.IsWhole && scope.FileCount is null && settings.Files.Any(file => file.Path == SettingsKeys.FileName);

    /// <summary>What the rules have to say of a library that they speak of.</summary>
    public static IEnumerable<Finding> Judge(
        Library library, CheckSettings settings, IReadOnlyList<ProcedureTraces> traces, CheckMemory memory, ParallelOptions parallel)
    {
        var view = new LibraryView(library, settings, traces, tree => memory.Mentioned.GetValue(tree, MentionedNames.Of));
        var findings = new ImmutableArray<Finding>[Rules.Length];
        Parallel.For(0, Rules.Length, parallel, i => findings[i] = [.. Rules[i].Check(view)]);
        return findings.SelectMany(one => one);
    }
}
