using System.Collections.Immutable;
using ProcScript.Analysis.Lifting;
using ProcScript.Analysis.Saying;
using ProcScript.Analysis.Settings;
using ProcScript.Model.Procedures;
using ProcScript.Syntax.Findings;

namespace ProcScript.Analysis.Runs;

/// <summary>What came of one procedure in one variant.</summary>
public sealed class ProcedureOutcome
{
    /// <summary>The procedure.</summary>
    public required Procedure Procedure { get; init; }

    /// <summary>What the shop has chosen about the checks.</summary>
    public required CheckSettings Settings { get; init; }

    /// <summary>What of it holds for the file that declares the procedure.</summary>
    public PathSettings OwnSettings => Settings.For(Procedure.Declared.Path);

    /// <summary>Its strip; null where errors in the text or the machine keep it from being run, or where the runs were let go.</summary>
    public required StripRun? Strip { get; init; }

    /// <summary>Its refit; null where the strip fails or no refit can be derived, or where the runs were let go.</summary>
    public required RefitRun? Refit { get; init; }

    /// <summary>Whether its strip can be done as written.</summary>
    public required bool IsStripSound { get; init; }

    /// <summary>What is wrong with it.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>Whether strip and refit were performed on the machine without a failure and left it as it was.</summary>
    public required bool IsProven { get; init; }

    /// <summary>What its texts say against what is so; worked out once somebody asks, and gone with the runs.</summary>
    internal ImmutableArray<Contradiction> AgainstSo => field.IsDefault ? field = SaidAgainstSo.In(this) : field;

    /// <summary>What is too heavy for those who lift it; worked out once somebody asks, and gone with the runs.</summary>
    internal ImmutableArray<HeavyLift> HeavyLifts => field.IsDefault ? field = [.. HeavyLift.Of(this)] : field;

    /// <summary>The outcome of a procedure that errors in its text or its machine keep from being run.</summary>
    internal static ProcedureOutcome NotRun(Procedure procedure, CheckSettings settings) =>
        new() { Procedure = procedure, Settings = settings, Strip = null, Refit = null, IsStripSound = false, Findings = [], IsProven = false };

    /// <summary>The outcome with the runs let go: they are by far the most of it.</summary>
    internal ProcedureOutcome WithoutRuns() => new()
    {
        Procedure = Procedure,
        Settings = Settings,
        Strip = null,
        Refit = null,
        IsStripSound = IsStripSound,
        Findings = Findings,
        IsProven = IsProven,
    };
}
