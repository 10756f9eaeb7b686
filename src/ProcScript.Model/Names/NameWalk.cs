using System.Collections.Immutable;
using System.Globalization;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Names;

/// <summary>Walks a file and collects what names something.</summary>
/// <param name="text">The text.</param>
internal sealed class NameWalk(SourceText text)
{
    private readonly List<NameUse> _found = [];
    private ImmutableDictionary<string, TextSpan> _variables = ImmutableDictionary.Create<string, TextSpan>(StringComparer.Ordinal);
    private string _machine = "";

    /// <summary>What was found.</summary>
    public IReadOnlyList<NameUse> Found => _found;

    /// <summary>Walks a node with all in it.</summary>
    public void Visit(SyntaxNode node)
    {
        switch (node)
        {
            case CatalogSyntax catalog:
                Add(catalog.Name, NameScope.Library, isDeclaration: true);
                Visit(catalog.Properties);
                break;
            case MachineSyntax machine:
                Add(machine.Name, NameScope.Library, isDeclaration: true);
                Within(machine.Name.Text, () => Visit(machine.Members));
                break;
            case ProcedureSyntax procedure:
                Procedure(procedure);
                break;
            case PartSyntax part:
                Declare(part.Name);
                Title(part.Title);
                Visit(part.Members);
                break;
            case EnergySyntax energy:
                Declare(energy.Name);
                Title(energy.Title);
                Visit(energy.Properties);
                break;
            case PlaceSyntax place:
                Declare(place.Name);
                Title(place.Title);
                break;
            case FluidSyntax fluid:
                Declare(fluid.Name);
                Title(fluid.Title);
                Visit(fluid.Properties);
                break;
            case ControlSyntax control:
                Declare(control.Name);
                Title(control.Title);
                Visit(control.Properties);
                break;
            case OptionSyntax option:
                Add(option.Name, NameScope.Machine, isDeclaration: true);
                break;
            case JointSyntax joint:
                Add(joint.Kind, NameScope.Library);
                Declare(joint.Name);
                Visit(joint.Clauses);
                break;
            case CoverSyntax cover:
                Add(cover.Kind, NameScope.Library);
                Declare(cover.Name);
                Visit(cover.Clauses);
                break;
            case EachSyntax each:
                Each(each);
                break;
            default:
                Phrase(node);
                break;
        }
    }

    private void Phrase(SyntaxNode node)
    {
        switch (node)
        {
            case TestSyntax test when test.Value is not null || _variables.ContainsKey(test.Name.Text):
                Variable(test.Name);
                break;
            case TestSyntax test:
                Add(test.Name, NameScope.Machine);
                break;
            case TextActionSyntax action:
                Instruments(action, action.Instruments);
                break;
            case CheckRuleSyntax rule:
                Instruments(rule, rule.Instruments);
                break;
            case VerifyPropertySyntax verify:
                Instruments(verify, verify.Instruments);
                break;
            case ForVariantsSyntax variants:
                foreach (var option in variants.Options)
                {
                    Add(option, NameScope.Machine);
                }

                break;
            case DoSyntax call:
                Add(call.Procedure, NameScope.Library);
                Variables(call.Arguments);
                break;
            case NamesPropertySyntax { Keyword.Text: "tool" or "drive" or "certified" } tools:
                References(tools.Names, NameScope.Library);
                break;
            case NamesPropertySyntax { Keyword.Text: "hazard" }:
                break;
            case NamesPropertySyntax { Keyword.Text: "on" or "carries" or "in" or "renew with", Names: [{ Name.Text: "none", Indices.IsEmpty: true }] }:
                break;
            case NamesPropertySyntax items:
                References(items.Names, NameScope.Machine);
                break;
            case PiecesPropertySyntax pieces:
                Reference(pieces.Item, NameScope.Library);
                break;
            case UsesPropertySyntax uses:
                Reference(uses.Supply, NameScope.Library);
                break;
            case ChangePropertySyntax change:
                Reference(change.Part, NameScope.Machine);
                References(change.Supply is { } supply ? [supply] : [], NameScope.Library);
                break;
            case PiecesSyntax pieces:
                Add(pieces.Kind, NameScope.Library);
                break;
            case ReferenceSyntax item:
                Reference(item, NameScope.Machine);
                break;
            case TextSyntax words:
                Placeholders(words);
                break;
            default:
                Visit(node.Children);
                break;
        }
    }

    /// <summary>A line done with tools of the catalog, beside which it names items of the machine.</summary>
    private void Instruments(SyntaxNode line, ImmutableArray<ReferenceSyntax> instruments)
    {
        References(instruments, NameScope.Library);
        Visit(line.Children.Where(child => child is not ReferenceSyntax reference || !instruments.Contains(reference)));
    }

    private void Title(TextSyntax? title)
    {
        if (title is not null)
        {
            Placeholders(title);
        }
    }

    private void Visit(IEnumerable<SyntaxNode> nodes)
    {
        foreach (var node in nodes)
        {
            Visit(node);
        }
    }

    private void Procedure(ProcedureSyntax procedure)
    {
        Add(procedure.Name, NameScope.Library, isDeclaration: true);
        Add(procedure.Machine, NameScope.Library);
        var outer = _variables;
        foreach (var parameter in procedure.Parameters)
        {
            Bind(parameter.Name);
        }

        Within(procedure.Machine.Text, () =>
        {
            Title(procedure.Title);
            Visit(procedure.Variants);
            Visit(procedure.Items);
        });
        _variables = outer;
    }

    private void Each(EachSyntax each)
    {
        var outer = _variables;
        Bind(each.Variable);
        Visit(each.Body);
        _variables = outer;
    }

    private void Within(string machine, Action walk)
    {
        var outer = _machine;
        _machine = machine;
        walk();
        _machine = outer;
    }

    private void Bind(WordSyntax variable)
    {
        if (!variable.IsMissing)
        {
            _variables = _variables.SetItem(variable.Text, variable.Span);
            _found.Add(new NameUse(variable.Span, variable.Text, NameScope.Block, OwnerOf(variable.Span), true));
        }
    }

    private void Declare(ReferenceSyntax name)
    {
        Add(name.Name, NameScope.Machine, isDeclaration: true);
        Variables(name.Indices);
    }

    private void References(IEnumerable<ReferenceSyntax> references, NameScope scope)
    {
        foreach (var reference in references)
        {
            Reference(reference, scope);
        }
    }

    private void Reference(ReferenceSyntax reference, NameScope scope)
    {
        Add(reference.Name, scope);
        Variables(reference.Indices);
    }

    private void Variables(IEnumerable<WordSyntax> words)
    {
        foreach (var word in words)
        {
            Variable(word);
        }
    }

    private void Variable(WordSyntax word)
    {
        if (_variables.TryGetValue(word.Text, out var declared))
        {
            _found.Add(new NameUse(word.Span, word.Text, NameScope.Block, OwnerOf(declared), false));
        }
    }

    private void Add(WordSyntax word, NameScope scope, bool isDeclaration = false)
    {
        if (!word.IsMissing)
        {
            _found.Add(new NameUse(word.Span, word.Text, scope, scope == NameScope.Machine ? _machine : "", isDeclaration));
        }
    }

    /// <summary>Variables in the braces of a text.</summary>
    private void Placeholders(TextSyntax words)
    {
        var raw = text.Content.AsSpan(words.Span.Start, words.Span.Length);
        for (var at = 0; at < raw.Length && raw[at..].IndexOf('{') is >= 0 and var brace; at++)
        {
            at += brace;
            if (at + 1 < raw.Length && raw[at + 1] == '{')
            {
                at++;
                continue;
            }

            var length = raw[at..].IndexOf('}');
            var name = length > 0 ? raw.Slice(at + 1, length - 1).ToString() : "";
            if (_variables.TryGetValue(name, out var declared))
            {
                _found.Add(new NameUse(new TextSpan(words.Span.Start + at + 1, name.Length), name, NameScope.Block, OwnerOf(declared), false));
            }
        }
    }

    private static string OwnerOf(TextSpan declared) => declared.Start.ToString(CultureInfo.InvariantCulture);
}
