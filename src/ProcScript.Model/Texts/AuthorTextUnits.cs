using System.Collections.Immutable;
using ProcScript.Model.Binding.Places;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Texts;

/// <summary>
/// Finds the texts of a file that cards print: everything in quotes but paths, the names of things without a title, and the words that are
/// filled into other texts: positions of controls and values of loops and parameters. A key is made of the names of what a text stands in, its
/// property, and the count of those alike: <c>machine.press:part.lid:at.1</c>.
/// </summary>
public static class AuthorTextUnits
{
    private const string WordsOf = "word";

    /// <summary>The key of a word that is filled into texts or printed by itself, such as a position of a control.</summary>
    public static string KeyOfWord(string word) => $"{WordsOf}:{word}";

    /// <summary>Every text, in the order of the file.</summary>
    public static ImmutableArray<AuthorTextUnit> Of(SyntaxTree tree)
    {
        ArgumentNullException.ThrowIfNull(tree);
        var walk = new Walk();
        foreach (var declaration in tree.Root.Declarations)
        {
            walk.Visit(declaration, "");
        }

        return walk.ToImmutable();
    }

    private sealed class Walk
    {
        private readonly ImmutableArray<AuthorTextUnit>.Builder _units = ImmutableArray.CreateBuilder<AuthorTextUnit>();
        private readonly Dictionary<string, int> _alike = new(StringComparer.Ordinal);
        private readonly HashSet<string> _words = new(StringComparer.Ordinal);

        public ImmutableArray<AuthorTextUnit> ToImmutable() => _units.ToImmutable();

        public void Visit(SyntaxNode node, string within)
        {
            var here = Own(node) is { } own ? Joined(within, own, isCounted: !IsNamed(node)) : within;
            if (Unnamed(node) is { } name)
            {
                Add(Joined(here, "title", isCounted: false), name.Span, AuthorText.Words(name.Name.Text));
            }

            foreach (var child in node.Children)
            {
                switch (child)
                {
                    case TextSyntax text when IsPrinted(node) && text.Span.Length >= 2 && text.Value.Length > 0:
                        Add(Joined(here, PropertyOf(node), isCounted: !IsTitled(node)), text.Span, text.Value);
                        break;
                    case TextSyntax:
                        break;
                    case ValuesSyntax values:
                        AddWords(values.Values);
                        break;
                    default:
                        Visit(child, here);
                        break;
                }
            }

            if (node is ControlSyntax control)
            {
                AddWords(control.Positions);
            }
        }

        private void AddWords(ImmutableArray<WordSyntax> words)
        {
            foreach (var word in words.Where(word => !word.IsMissing && !char.IsAsciiDigit(word.Text[0]) && _words.Add(word.Text)))
            {
                Add(KeyOfWord(word.Text), word.Span, AuthorText.Words(word.Text));
            }
        }

        private void Add(string key, Syntax.Text.TextSpan span, string source) => _units.Add(new AuthorTextUnit(key, span, source));

        /// <summary>A key with one part more; what may come several times is counted.</summary>
        private string Joined(string within, string part, bool isCounted)
        {
            var key = within.Length == 0 ? part : $"{within}:{part}";
            if (!isCounted)
            {
                return key;
            }

            var count = _alike[key] = _alike.GetValueOrDefault(key) + 1;
            return string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{key}.{count}");
        }
    }

    private static bool IsPrinted(SyntaxNode node) => node is not UseSyntax;

    /// <summary>Whether its text is its title, of which it has one at the most.</summary>
    private static bool IsTitled(SyntaxNode node) => node is DeclarationSyntax or StageSyntax || (node is MemberSyntax and not (PropertySyntax or AsideSyntax));

    /// <summary>Whether a node has a name of its own, so that it need not be counted.</summary>
    private static bool IsNamed(SyntaxNode node) => node is DeclarationSyntax or PartSyntax or EnergySyntax or FluidSyntax or ControlSyntax or PlaceSyntax or OptionSyntax or JointSyntax or CoverSyntax;

    /// <summary>What a node adds to the key of the texts in it; null where it adds nothing.</summary>
    private static string? Own(SyntaxNode node) => node switch
    {
        MachineSyntax machine => $"machine.{machine.Name.Text}",
        ProcedureSyntax procedure => $"procedure.{procedure.Name.Text}",
        DeclarationSyntax declaration => $"catalog.{declaration.Name.Text}",
        PartSyntax part => $"part.{Name(part.Name)}",
        EnergySyntax energy => $"energy.{Name(energy.Name)}",
        FluidSyntax fluid => $"fluid.{Name(fluid.Name)}",
        ControlSyntax control => $"control.{Name(control.Name)}",
        PlaceSyntax place => $"place.{Name(place.Name)}",
        OptionSyntax option => $"option.{option.Name.Text}",
        JointSyntax joint => $"joint.{Name(joint.Name)}",
        CoverSyntax cover => $"cover.{Name(cover.Name)}",
        StageSyntax => "stage",
        ActionSyntax action => $"{action.Verb.Text}.{Name(action.Target)}",
        RefitSyntax => "refit",
        _ => null,
    };

    /// <summary>What a thing is called by that has no title; null for all else.</summary>
    private static (Syntax.Text.TextSpan Span, WordSyntax Name)? Unnamed(SyntaxNode node) => node switch
    {
        MachineSyntax { Title: null } machine => (machine.Name.Span, machine.Name),
        CatalogSyntax { Title: null } catalog => (catalog.Name.Span, catalog.Name),
        ProcedureSyntax { Title: null } procedure => (procedure.Name.Span, procedure.Name),
        OptionSyntax { Title: null } option => (option.Name.Span, option.Name),
        PartSyntax { Title: null } part => (part.Name.Span, part.Name.Name),
        EnergySyntax { Title: null } energy => (energy.Name.Span, energy.Name.Name),
        FluidSyntax { Title: null } fluid => (fluid.Name.Span, fluid.Name.Name),
        PlaceSyntax { Title: null } place => (place.Name.Span, place.Name.Name),
        ControlSyntax { Title: null } control => (control.Name.Span, control.Name.Name),
        _ => null,
    };

    private static string PropertyOf(SyntaxNode node) => node switch
    {
        _ when IsTitled(node) => "title",
        PropertySyntax property => property.Keyword.Text.Replace(' ', '-'),
        TextActionSyntax action => action.Verb.Text,
        CheckRuleSyntax check => check.Verb.Text,
        TestRuleSyntax => "test",
        DiscardSyntax => "because",
        _ => node.GetType().Name.Replace("Syntax", "", StringComparison.Ordinal).ToLowerInvariant(),
    };

    /// <summary>A reference as one word: its index follows with points.</summary>
    private static string Name(ReferenceSyntax reference) => string.Join('.', reference.Indices.Select(index => index.Text).Prepend(reference.Name.Text));
}
