using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>What comes of a procedure in one variant with one choice of arguments.</summary>
internal sealed class ProcedureDraft
{
    /// <summary>What it was made from.</summary>
    public required ProcedureOutline Outline { get; init; }

    /// <summary>The machine in the variant.</summary>
    public required BoundMachine Machine { get; init; }

    /// <summary>The arguments.</summary>
    public required ImmutableArray<string> Arguments { get; init; }

    /// <summary>What people call it.</summary>
    public required string Title { get; init; }

    /// <summary>What it is for.</summary>
    public required ImmutableArray<Goal> Goals { get; init; }

    /// <summary>Alerts for the whole job.</summary>
    public required ImmutableArray<Alert> Alerts { get; init; }

    /// <summary>What its own properties say, with those of the procedures that it calls.</summary>
    public required ActionDetails Details { get; init; }

    /// <summary>The strip.</summary>
    public required ImmutableArray<Stage> Stages { get; init; }

    /// <summary>The work.</summary>
    public required ImmutableArray<Step> Work { get; init; }

    /// <summary>The refit rules.</summary>
    public required ImmutableArray<RefitRule> Rules { get; init; }

    /// <summary>What binding it had to say.</summary>
    public required FindingSink Sink { get; init; }

    /// <summary>The procedure, made from these files.</summary>
    public Procedure Finish(ImmutableArray<string> files) => new()
    {
        Name = Outline.Symbol.Name,
        Arguments = Arguments,
        Title = Title,
        Declared = Outline.Symbol.Declared,
        Machine = Machine.Machine,
        Goals = Goals,
        Alerts = Alerts,
        Details = Details,
        Stages = Stages,
        Work = Work,
        Rules = Rules,
        Files = files,
        HasErrors = Sink.HasErrors || Machine.HasErrors || Outline.Sink.HasErrors || Outline.Symbol.IsFaulty,
    };
}
