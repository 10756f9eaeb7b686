using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Procedures;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>What comes of a procedure in one variant with one choice of arguments.</summary>
internal sealed class ProcedureDraft
{
    private Procedure? _procedure;

    /// <summary>What it was made from.</summary>
    public required ProcedureHead Head { get; init; }

    /// <summary>The procedures whose text it took in, and whether their heads had errors.</summary>
    public required IReadOnlyCollection<CalledHead> Called { get; init; }

    /// <summary>The machine in the variant.</summary>
    public required BoundMachine Machine { get; init; }

    /// <summary>The arguments.</summary>
    public required ImmutableArray<string> Arguments { get; init; }

    /// <summary>The names of the parameters.</summary>
    public required ImmutableArray<string> Parameters { get; init; }

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

    /// <summary>Whether it would be the same now, on the same machine.</summary>
    /// <param name="outline">The procedure.</param>
    /// <param name="machine">The machine in the variant.</param>
    /// <param name="outlines">All procedures.</param>
    /// <param name="validity">Tells what still holds.</param>
    public bool Holds(ProcedureOutline outline, BoundMachine machine, ProcedureOutlines outlines, Validity validity) =>
        ReferenceEquals(outline.Head, Head)
        && ReferenceEquals(machine, Machine)
        && validity.Holds(Sink, Head.Symbol.File)
        && Called.All(called => called.Holds(outlines));

    /// <summary>The procedure, made from these files.</summary>
    public Procedure Finish(ProcedureOutline outline, ImmutableArray<string> files)
    {
        var hasErrors = Sink.HasErrors || Machine.HasErrors || outline.Sink.HasErrors || outline.Symbol.IsFaulty;
        if (_procedure is null || _procedure.HasErrors != hasErrors || !_procedure.Files.AsSpan().SequenceEqual(files.AsSpan()))
        {
            _procedure = Make(files, hasErrors);
        }

        return _procedure;
    }

    private Procedure Make(ImmutableArray<string> files, bool hasErrors) => new()
    {
        Name = Head.Symbol.Name,
        Arguments = Arguments,
        Parameters = Parameters,
        Title = Title,
        Declared = Head.Symbol.Declared,
        Machine = Machine.Machine,
        OnlyWith = [.. Variants.OptionsOf(Head.Guards.On, Machine.Machine.Options)],
        OnlyWithout = [.. Variants.OptionsOf(Head.Guards.Off, Machine.Machine.Options)],
        Goals = Goals,
        Alerts = Alerts,
        Details = Details,
        Stages = Stages,
        Work = Work,
        Rules = Rules,
        Files = files,
        HasErrors = hasErrors,
    };
}

/// <summary>A procedure that was called from another.</summary>
/// <param name="Head">What it says of itself.</param>
/// <param name="HadErrors">Whether something was wrong with that, or with its calls.</param>
internal readonly record struct CalledHead(ProcedureHead Head, bool HadErrors)
{
    /// <summary>Whether that is so now.</summary>
    public bool Holds(ProcedureOutlines outlines) =>
        outlines.Find(Head.Symbol) is { } outline && ReferenceEquals(outline.Head, Head) && outline.Sink.HasErrors == HadErrors;
}

/// <summary>What a draft is known by.</summary>
/// <param name="Symbol">The procedure.</param>
/// <param name="Arguments">The arguments, joined.</param>
/// <param name="Variant">The options of the machine that are on.</param>
internal readonly record struct DraftKey(ProcedureSymbol Symbol, string Arguments, ulong Variant);
