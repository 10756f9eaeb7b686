using ProcScript.Model.Binding.Files;
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

    /// <summary>Whether the parser failed to understand something in it, so that even its name may not be what was meant.</summary>
    public bool HasSyntaxErrors { get; } = file.HasSyntaxErrorsIn(node.Span);

    /// <summary>Whether its text, or something that it is made from, carries an error.</summary>
    public bool IsFaulty { get; set; } = file.HasStraySyntaxErrors || file.HasSyntaxErrorsIn(node.Span);
}

/// <summary>A declaration of the catalog.</summary>
internal abstract class CatalogSymbol(SourceFile file, CatalogSyntax node) : Symbol(file, node)
{
    /// <summary>The declaration.</summary>
    public CatalogSyntax Node => node;

    /// <inheritdoc/>
    public override string Sort => "a " + node.Keyword.Text;
}

/// <summary>A tool.</summary>
internal sealed class ToolSymbol(SourceFile file, CatalogSyntax node) : CatalogSymbol(file, node)
{
    /// <summary>The tool, once the catalog is bound.</summary>
    public Tool? Tool { get; set; }
}

/// <summary>A supply.</summary>
internal sealed class SupplySymbol(SourceFile file, CatalogSyntax node) : CatalogSymbol(file, node)
{
    /// <summary>The supply, once the catalog is bound.</summary>
    public Supply? Supply { get; set; }
}

/// <summary>A kind of joint.</summary>
internal sealed class KindSymbol(SourceFile file, CatalogSyntax node, KindCategory category) : CatalogSymbol(file, node)
{
    /// <summary>Its sort.</summary>
    public KindCategory Category => category;

    /// <summary>The kind, once the catalog is bound.</summary>
    public Kind? Kind { get; set; }
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
