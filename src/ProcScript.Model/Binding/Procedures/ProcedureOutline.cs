using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Machines;
using ProcScript.Model.Binding.Names;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Procedures;

/// <summary>What is known of a procedure before its variants and arguments are chosen.</summary>
internal sealed class ProcedureOutline
{
    /// <summary>The declaration.</summary>
    public required ProcedureSymbol Symbol { get; init; }

    /// <summary>Its machine; null where the name does not resolve, which is reported.</summary>
    public required MachineOutline? Machine { get; init; }

    /// <summary>Its parameters.</summary>
    public required ImmutableArray<Parameter> Parameters { get; init; }

    /// <summary>The procedures that it calls, in the order of the text.</summary>
    public required ImmutableArray<ProcedureCall> Calls { get; init; }

    /// <summary>The options of its machine that a <c>when</c> of it, or of what it calls, asks for: a bit each.</summary>
    public ulong Options { get; set; }

    /// <summary>What is to be said whatever the variant and the arguments.</summary>
    public required FindingSink Sink { get; init; }
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
