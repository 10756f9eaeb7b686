using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Names;

/// <summary>A declaration at the top of a file: what a name may stand for.</summary>
internal abstract class Symbol(SourceFile file, DeclarationSyntax node)
{
    /// <summary>The file.</summary>
    public SourceFile File => file;

    /// <summary>The name.</summary>
    public string Name => node.Name.Text;

    /// <summary>Where the name stands.</summary>
    public SourceSpan Declared => new(file.Path, node.Name.Span);

    /// <summary>The whole declaration.</summary>
    public TextSpan Span => node.Span;

    /// <summary>What it is, with its article: <c>a tool</c>.</summary>
    public abstract string Sort { get; }

    /// <summary>Its node.</summary>
    public DeclarationSyntax Declaration => node;

    /// <summary>Whether the parser failed to understand something in it, so that even its name may not be what was meant.</summary>
    public bool HasSyntaxErrors { get; private set; }

    /// <summary>Whether the parser failed to understand something that may have taken a part of it.</summary>
    public bool MayBeCutShort { get; private set; }

    /// <summary>Whether its text, or something that it is made from, carries an error.</summary>
    public bool IsFaulty { get; set; }

    /// <summary>What is known to be wrong with it.</summary>
    public (bool IsFaulty, bool MayBeCutShort) Trouble => (IsFaulty, MayBeCutShort);

    /// <summary>Whether it was faulty in the binding that last came to its end; null where it was not there.</summary>
    public SymbolFaults? Settled { get; set; }

    /// <summary>Whether it is faulty before and after the catalog is bound, as far as that is done.</summary>
    public SymbolFaults Faults { get; set; }

    /// <summary>Whether a name was found to mean it, at whatever time.</summary>
    public bool IsSeen { get; set; }

    /// <summary>Of the catalog: what it is bound to.</summary>
    public virtual object? Bound => null;

    /// <summary>Begins a binding: nothing is known but what the parser said.</summary>
    public void Begin()
    {
        HasSyntaxErrors = file.HasSyntaxErrorsIn(node.Span);
        MayBeCutShort = file.HasStraySyntaxErrors || HasSyntaxErrors;
        IsFaulty = MayBeCutShort;
    }
}

/// <summary>Whether a declaration carries an error.</summary>
/// <param name="Early">Before the catalog is bound.</param>
/// <param name="Late">After.</param>
internal readonly record struct SymbolFaults(bool Early, bool Late);

/// <summary>A declaration of the catalog.</summary>
internal abstract class CatalogSymbol(SourceFile file, CatalogSyntax node) : Symbol(file, node)
{
    /// <summary>The declaration.</summary>
    public CatalogSyntax Node => node;

    /// <inheritdoc/>
    public override string Sort => "a " + node.Keyword.Text;

    /// <summary>What binding it had to say; null before it is bound.</summary>
    public FindingSink? Sink { get; set; }

    /// <summary>What the declaration was bound to that had its name in the file before; null where there was none.</summary>
    public object? Before { get; set; }
}

/// <summary>A tool.</summary>
internal sealed class ToolSymbol(SourceFile file, CatalogSyntax node) : CatalogSymbol(file, node)
{
    /// <summary>The tool, once the catalog is bound.</summary>
    public Tool? Tool { get; set; }

    /// <inheritdoc/>
    public override object? Bound => Tool;
}

/// <summary>A supply.</summary>
internal sealed class SupplySymbol(SourceFile file, CatalogSyntax node) : CatalogSymbol(file, node)
{
    /// <summary>The supply, once the catalog is bound.</summary>
    public Supply? Supply { get; set; }

    /// <inheritdoc/>
    public override object? Bound => Supply;
}

/// <summary>A certificate.</summary>
internal sealed class CertificateSymbol(SourceFile file, CatalogSyntax node) : CatalogSymbol(file, node)
{
    /// <summary>The certificate, once the catalog is bound.</summary>
    public Certificate? Certificate { get; set; }

    /// <inheritdoc/>
    public override object? Bound => Certificate;
}

/// <summary>A kind of joint.</summary>
internal sealed class KindSymbol(SourceFile file, CatalogSyntax node, KindCategory category) : CatalogSymbol(file, node)
{
    /// <summary>Its sort.</summary>
    public KindCategory Category => category;

    /// <summary>The kind, once the catalog is bound.</summary>
    public Kind? Kind { get; set; }

    /// <inheritdoc/>
    public override object? Bound => Kind;
}

/// <summary>A machine.</summary>
internal sealed class MachineSymbol(SourceFile file, MachineSyntax node) : Symbol(file, node)
{
    /// <summary>The declaration.</summary>
    public MachineSyntax Node => node;

    /// <inheritdoc/>
    public override string Sort => "a machine";
}

/// <summary>A procedure.</summary>
internal sealed class ProcedureSymbol(SourceFile file, ProcedureSyntax node) : Symbol(file, node)
{
    /// <summary>The declaration.</summary>
    public ProcedureSyntax Node => node;

    /// <inheritdoc/>
    public override string Sort => "a procedure";
}
