using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>What is known of a procedure before its variants and arguments are chosen.</summary>
internal sealed class ProcedureOutline
{
    /// <summary>What it says of itself.</summary>
    public required ProcedureHead Head { get; init; }

    /// <summary>The declaration.</summary>
    public ProcedureSymbol Symbol => Head.Symbol;

    /// <summary>Its machine; null where the name does not resolve, which is reported.</summary>
    public MachineOutline? Machine => Head.Machine;

    /// <summary>Its parameters.</summary>
    public ImmutableArray<Parameter> Parameters => Head.Parameters;

    /// <summary>The procedures that it calls, in the order of the text.</summary>
    public ImmutableArray<ProcedureCall> Calls => Head.Calls;

    /// <summary>The options of its machine that it, or what it calls, asks for: a bit each.</summary>
    public required ulong Options { get; set; }

    /// <summary>What is to be said whatever the variant and the arguments.</summary>
    public required FindingSink Sink { get; init; }

    /// <summary>An outline that knows of no other procedure yet.</summary>
    public static ProcedureOutline Of(ProcedureHead head) => new() { Head = head, Options = head.Options, Sink = head.Sink.Copy() };
}

/// <summary>What a procedure says of itself, whatever others say.</summary>
/// <param name="Symbol">The declaration.</param>
/// <param name="Machine">Its machine; null where the name does not resolve, which is reported.</param>
/// <param name="Parameters">Its parameters.</param>
/// <param name="Calls">The procedures that it calls, in the order of the text.</param>
/// <param name="Guards">The variants of its machine that have it.</param>
/// <param name="Options">The options of its machine that a <c>when</c> of its own, or its own <see cref="Guards"/>, ask for: a bit each.</param>
/// <param name="Sink">What is to be said of that.</param>
internal sealed record ProcedureHead(
    ProcedureSymbol Symbol,
    MachineOutline? Machine,
    ImmutableArray<Parameter> Parameters,
    ImmutableArray<ProcedureCall> Calls,
    Guards Guards,
    ulong Options,
    FindingSink Sink)
{
    /// <summary>Whether it would be the same now.</summary>
    public bool Holds(IReadOnlyDictionary<MachineSymbol, MachineOutline> machines, Validity validity) =>
        (Machine is null || (machines.TryGetValue(Machine.Symbol, out var outline) && ReferenceEquals(outline, Machine)))
        && validity.Holds(Sink, Symbol.File);
}

/// <summary>A parameter of a procedure.</summary>
/// <param name="Name">The variable.</param>
/// <param name="Domain">What it may be.</param>
/// <param name="Declared">Where it is declared.</param>
internal sealed record Parameter(string Name, ImmutableArray<string> Domain, SourceSpan Declared);

/// <summary>A <c>do</c> that leads to a procedure.</summary>
/// <param name="Target">The procedure.</param>
/// <param name="Source">Where the <c>do</c> stands.</param>
internal readonly record struct ProcedureCall(ProcedureSymbol Target, SourceSpan Source);
