using System.Collections.Immutable;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Catalog;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Names;

/// <summary>Resolves the names of declarations at the top of files, and says what is wrong where one does not resolve.</summary>
/// <param name="table">The declarations.</param>
/// <param name="isKept">Whether what is looked up is noted, for a later binding.</param>
internal sealed class SymbolLookup(SymbolTable table, bool isKept)
{
    /// <summary>The tool of that name, or null with a finding.</summary>
    public Tool? Tool(ReferenceSyntax reference, BindingPlace place, FindingSink sink) =>
        Find<ToolSymbol>(reference, "tool", place, sink)?.Tool;

    /// <summary>The tools of these names, without those that do not resolve, which is reported.</summary>
    public IEnumerable<Tool> Tools(ImmutableArray<ReferenceSyntax> references, BindingPlace place, FindingSink sink) =>
        references.Select(reference => Tool(reference, place, sink)).OfType<Tool>();

    /// <summary>The supply of that name, or null with a finding.</summary>
    public Supply? Supply(ReferenceSyntax reference, BindingPlace place, FindingSink sink) =>
        Find<SupplySymbol>(reference, "supply", place, sink)?.Supply;

    /// <summary>The certificates of these names, without those that do not resolve, which is reported.</summary>
    public IEnumerable<Certificate> Certificates(ImmutableArray<ReferenceSyntax> references, BindingPlace place, FindingSink sink) =>
        references.Select(reference => Find<CertificateSymbol>(reference, "certificate", place, sink)?.Certificate).OfType<Certificate>();

    /// <summary>What a name stands for, or null with a finding. What follows from an error reported elsewhere stays quiet.</summary>
    /// <param name="name">The name.</param>
    /// <param name="sort">What is wanted, in words: <c>tool</c>.</param>
    /// <param name="place">Where.</param>
    /// <param name="sink">Where findings go.</param>
    public TSymbol? Find<TSymbol>(WordSyntax name, string sort, BindingPlace place, FindingSink sink)
        where TSymbol : Symbol
    {
        if (name.IsMissing)
        {
            sink.Poison();
            return null;
        }

        switch (See(name.Text, place.File, sink))
        {
            case TSymbol { IsFaulty: true } faulty:
                sink.Poison();
                return faulty;

            case TSymbol found:
                return found;

            case { } other:
                sink.Report(WrongSortOfItem.At(name.Text, other.Sort, "a " + sort, place.At(name.Span), other.Declared), place);
                return null;

            case null when table.IsIncomplete(place.File):
                sink.Poison();
                return null;

            default:
                sink.Report(Unknown<TSymbol>(name, sort, place, sink), place);
                return null;
        }
    }

    /// <summary>What a name means, or null; nothing is said of it.</summary>
    public Symbol? See(string name, SourceFile from, FindingSink sink)
    {
        var found = table.Find(name, from);
        if (isKept)
        {
            sink.Saw(name, from, found);
        }

        return found;
    }

    private Finding Unknown<TSymbol>(WordSyntax name, string sort, BindingPlace place, FindingSink sink)
        where TSymbol : Symbol
    {
        // Not in sight, so wherever it is declared a `use` line is missing.
        Symbol[] unseen = [.. table.Everywhere(name.Text).Where(symbol => symbol is TSymbol).Take(3)];
        return unseen.Length > 0
            ? UnknownName.NotUsed(name.Text, sort, unseen, place, name.Span)
            : UnknownName.At(name.Text, sort, table.Near(name.Text, place.File, sink, symbol => symbol is TSymbol), place, name.Span);
    }

    private TSymbol? Find<TSymbol>(ReferenceSyntax reference, string sort, BindingPlace place, FindingSink sink)
        where TSymbol : Symbol
    {
        var found = Find<TSymbol>(reference.Name, sort, place, sink);
        if (found is not null && !reference.Indices.IsEmpty)
        {
            sink.Report(IndexMismatch.OnSymbol(found, place.At(reference.Span), place.At(reference.Name.Span)), place);
        }

        return found;
    }
}
