using System.Collections.Immutable;
using ProcScript.Model.Binding.Files;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Syntax;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Quantities;

/// <summary>Reads a quantity that stands by itself, such as a limit in a settings file, by the grammar and the units of the language.</summary>
public static class QuantityText
{
    private const string Before = "tool sample { size ";
    private const string After = " }";

    /// <summary>Reads a text.</summary>
    /// <param name="text">The text, such as <c>20 kg</c>.</param>
    /// <param name="word">What the reader calls the place that it stands at.</param>
    /// <param name="dimension">What it has to measure.</param>
    public static QuantityReading Read(string text, string word, Dimension dimension)
    {
        ArgumentNullException.ThrowIfNull(text);
        var written = text.Trim();
        var file = new SourceFile("");
        file.Set(SyntaxTree.Parse(new SourceText("", Before + written + After)), isRead: true);
        // Whatever else the text may hold, only a quantity fills the place of one from its first to its last letter.
        var isOne = file.Tree is { Findings.IsEmpty: true, Root.Declarations: [CatalogSyntax { Properties: [QuantityPropertySyntax property] }] }
            && property.Quantity.Span == new TextSpan(Before.Length, written.Length);
        if (!isOne)
        {
            return new QuantityReading(null, $"`{word}` takes {dimension.WithArticle()}, and this is no quantity", Units(dimension));
        }

        var quantity = ((QuantityPropertySyntax)((CatalogSyntax)file.Tree.Root.Declarations[0]).Properties[0]).Quantity;
        var sink = new FindingSink();
        var bound = QuantityBinder.Bind(quantity, new QuantityDemand(word, [dimension], IsLeastAllowed: true), BindingPlace.In(file), sink);
        return sink.Findings is [var first, ..]
            ? new QuantityReading(null, first.Finding.Message, first.Finding.Help.Length > 0 ? first.Finding.Help : Units(dimension))
            : new QuantityReading(bound, "", "");
    }

    private static string Units(Dimension dimension) => Rules.Quantities.MissingUnit.Choices(new QuantityDemand("", ImmutableArray.Create(dimension)));
}

/// <summary>What came of reading a quantity.</summary>
/// <param name="Quantity">The quantity; null where there is none.</param>
/// <param name="Problem">Why there is none.</param>
/// <param name="Help">How to mend it.</param>
public readonly record struct QuantityReading(Quantity? Quantity, string Problem, string Help);
