using System.Collections.Immutable;
using ProcScript.Analysis.Refactoring;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Mending;

/// <summary>What mending a library comes to. Nothing is written: the texts are the caller's to write.</summary>
public sealed record MendReport
{
    /// <summary>The files that come out otherwise, in the order of their paths.</summary>
    public required ImmutableArray<MendedFile> Files { get; init; }

    /// <summary>The findings that were mended, in the order in which they were.</summary>
    public required ImmutableArray<Mend> Mended { get; init; }

    /// <summary>The fixes that were tried and not applied.</summary>
    public required ImmutableArray<RefusedMend> Refused { get; init; }

    /// <summary>Where fixes undo each other or never come to an end: what their rules would mend in such a file is left, and the rest is mended.</summary>
    public required ImmutableArray<MendFight> Fights { get; init; }

    /// <summary>The rules whose fixes do not settle, in whatever file.</summary>
    public IEnumerable<RuleInfo> Fighting => Fights.SelectMany(fight => fight.Rules).Distinct();

    /// <summary>What is left in the files that may be changed, and why.</summary>
    public required ImmutableArray<LeftFinding> Left { get; init; }

    /// <summary>The check of the texts as they come out.</summary>
    public required LibraryReport After { get; init; }
}

/// <summary>A file that comes out otherwise.</summary>
/// <param name="Path">The file.</param>
/// <param name="Before">Its text as it was read.</param>
/// <param name="After">Its text as it comes out.</param>
public sealed record MendedFile(string Path, string Before, string After)
{
    /// <summary>One edit that makes of the one text the other: of the lines in which they differ.</summary>
    public TextEdit Edit() => EditedFile.Difference(new SourceText(Path, Before), After);
}

/// <summary>Fixes that do not settle in a file.</summary>
/// <param name="Path">The file.</param>
/// <param name="Rules">Their rules, in the order of the codes.</param>
public sealed record MendFight(string Path, ImmutableArray<RuleInfo> Rules);

/// <summary>A finding that was mended.</summary>
/// <param name="Finding">The finding; its places are those of the round in which it was mended.</param>
/// <param name="Fix">What mended it.</param>
public sealed record Mend(Finding Finding, Fix Fix);

/// <summary>A fix that was tried and not applied.</summary>
/// <param name="Finding">The finding.</param>
/// <param name="Fix">The fix.</param>
/// <param name="Line">The line of the finding as it was tried, counted from 1.</param>
/// <param name="Because">Why not, as the rest of a sentence: <c>it would bring …</c>.</param>
public sealed record RefusedMend(Finding Finding, Fix Fix, int Line, string Because);

/// <summary>A finding that is left.</summary>
/// <param name="Reported">The finding.</param>
/// <param name="Because">Why.</param>
public sealed record LeftFinding(ReportedFinding Reported, LeftBecause Because);

/// <summary>Why a finding is left.</summary>
public enum LeftBecause
{
    /// <summary>It has no fix, or one that is only shown.</summary>
    NoFix,

    /// <summary>Its fix needs a look, and such fixes were not asked for.</summary>
    NeedsLook,

    /// <summary>It has several fixes, and a person has to choose.</summary>
    Choice,

    /// <summary>Its rule was not asked for.</summary>
    OtherRule,

    /// <summary>Its fix was tried and not applied, or reaches into a file that is not to be changed.</summary>
    Refused,
}
