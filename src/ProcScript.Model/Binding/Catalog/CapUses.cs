using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Catalog;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Catalog;

/// <summary>Binds <c>cap</c>.</summary>
internal static class CapUses
{
    /// <summary>The caps that go on, or null with a finding.</summary>
    public static CapUse? Bind(PiecesPropertySyntax cap, SymbolLookup lookup, BindingPlace place, FindingSink sink)
    {
        var tool = lookup.Tool(cap.Item, place, sink);
        return Counts.Bind(cap.Count, "`cap`", place, sink) is { } count && tool is not null ? new CapUse(count, tool) : null;
    }
}
