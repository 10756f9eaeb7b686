using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Properties;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds where an energy is proved to be off.</summary>
internal sealed class VerificationBinder(SymbolLookup lookup, ItemLookup items, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>The place; null where none is said, or its name does not resolve, which is reported.</summary>
    public VerifyPlace? Place(VerifyPropertySyntax syntax, BindingPlace place)
    {
        var item = syntax.Place is { } named ? Item(named, place) : null;
        var words = syntax.PlaceText is { } text ? AuthorText.Bind(text, place, sink) : item?.Title ?? "";
        var (needs, tools) = Block(syntax, place);
        return item is null && words.Length == 0 && syntax.Properties.IsEmpty && syntax.Instruments.IsEmpty
            ? null
            : new VerifyPlace
            {
                Item = item,
                Words = words,
                Conditions = needs,
                Tools = tools,
                Declared = place.At(syntax.Span),
            };
    }

    /// <summary>The joint, part or control of that name; null with a finding where it is none.</summary>
    private MachineItem? Item(ReferenceSyntax name, BindingPlace place)
    {
        var item = items.Find(name, place);
        if (item is null or Joint or Part or Control)
        {
            return item;
        }

        sink.Report(WrongSortOfItem.At(item.Name, ItemWords.Sort(item), "a joint, a part or a control", place.At(name.Span), item.Declared), place);
        return null;
    }

    private (ImmutableArray<Condition> Needs, ImmutableArray<Tool> Tools) Block(VerifyPropertySyntax syntax, BindingPlace place)
    {
        var needs = ImmutableArray.CreateBuilder<Condition>();
        var tools = ImmutableArray.CreateBuilder<Tool>();
        tools.AddRange(lookup.Tools(syntax.Instruments, place, sink));
        var gate = new PropertyGate(PropertyHolders.Verification, sink);
        foreach (var (property, where) in items.Properties(syntax.Properties, place))
        {
            if (!gate.Lets(property, where))
            {
                continue;
            }

            switch (property)
            {
                case NamesPropertySyntax named:
                    tools.AddRange(lookup.Tools(named.Names, where, sink));
                    break;
                case NeedsPropertySyntax clause:
                    needs.AddRange(conditions.Needs(clause, where));
                    break;
            }
        }

        return (needs.ToImmutable(), tools.ToImmutable());
    }
}
