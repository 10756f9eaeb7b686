using System.Runtime.CompilerServices;
using ProcScript.LanguageServer.Workspaces;
using ProcScript.Syntax.Nodes;

namespace ProcScript.LanguageServer.Completing;

/// <summary>
/// How often the document, the files it uses and those beside it begin a sentence with a word in blocks of a sort, and behind which other: the
/// usual comes first.
/// </summary>
internal sealed class Habits
{
    private static readonly ConditionalWeakTable<DeclarationSyntax, Dictionary<(string Block, string Before, string Word), int>> Counted = [];

    private readonly Dictionary<(string Before, string Word), int> _counts = [];

    /// <summary>Counts the words of blocks.</summary>
    /// <param name="asked">The document.</param>
    /// <param name="block">The sort of block, as <see cref="TypingPlace.Block"/> names it.</param>
    public Habits(Asked asked, string block)
    {
        foreach (var path in Neighbours.Of(asked))
        {
            foreach (var declaration in asked.Analysis.Library.Trees[path].Root.Declarations)
            {
                foreach (var ((sort, before, word), count) in Counted.GetValue(declaration, Count))
                {
                    if (sort == block)
                    {
                        _counts[(before, word)] = _counts.GetValueOrDefault((before, word)) + count;
                    }
                }
            }
        }
    }

    /// <summary>How often a word begins a sentence there.</summary>
    public int Count(string word) => _counts.GetValueOrDefault(("", word));

    /// <summary>How often it begins one behind a sentence that begins with another.</summary>
    public int Count(string before, string word) => before.Length == 0 ? 0 : _counts.GetValueOrDefault((before, word));

    private static Dictionary<(string, string, string), int> Count(DeclarationSyntax declaration)
    {
        var counts = new Dictionary<(string, string, string), int>();
        Count(declaration, SortOf(declaration) ?? "", counts);
        return counts;
    }

    private static void Count(SyntaxNode node, string block, Dictionary<(string, string, string), int> counts)
    {
        var before = "";
        foreach (var child in node.Children)
        {
            if (WordOf(child) is { } word)
            {
                counts[(block, "", word)] = counts.GetValueOrDefault((block, "", word)) + 1;
                if (before.Length > 0)
                {
                    counts[(block, before, word)] = counts.GetValueOrDefault((block, before, word)) + 1;
                }

                before = word;
            }

            Count(child, SortOf(child) ?? block, counts);
        }
    }

    private static string? SortOf(SyntaxNode node) => node switch
    {
        CatalogSyntax catalog => catalog.Keyword.Text,
        MachineSyntax => "machine",
        ProcedureSyntax => "procedure",
        PartSyntax => "part",
        EnergySyntax => "energy",
        FluidSyntax => "fluid",
        ControlSyntax => "control",
        JointSyntax joint => joint.Keyword.Text,
        CoverSyntax cover => cover.Keyword.Text,
        StageSyntax => "stage",
        WorkSyntax => "work",
        RefitSyntax => "refit",
        TestRuleSyntax => "test",
        ActionSyntax => TypingPlace.Action,
        TextActionSyntax or CheckRuleSyntax => TypingPlace.TextAction,
        RefitPropertySyntax => TypingPlace.ActionInRefit,
        _ => null,
    };

    private static string? WordOf(SyntaxNode node) => node switch
    {
        PropertySyntax property => property.Keyword.Text.Split(' ')[0],
        JointSyntax joint => joint.Keyword.Text,
        ActionSyntax action => action.Verb.Text,
        TextActionSyntax action => action.Verb.Text,
        PartSyntax => "part",
        EnergySyntax => "energy",
        FluidSyntax => "fluid",
        ControlSyntax => "control",
        PlaceSyntax => "place",
        OptionSyntax => "option",
        EachSyntax => "each",
        WhenSyntax => "when",
        StageSyntax => "stage",
        GoalSyntax => "goal",
        DoSyntax => "do",
        WorkSyntax => "work",
        RefitSyntax => "refit",
        AsideSyntax => "aside",
        OrderRuleSyntax rule => rule.Verb.Text,
        CheckRuleSyntax => "check",
        TestRuleSyntax => "test",
        _ => null,
    };
}
