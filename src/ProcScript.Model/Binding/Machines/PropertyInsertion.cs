using ProcScript.Syntax.Findings;
using ProcScript.Syntax.Nodes;
using ProcScript.Syntax.Text;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Puts properties into the block of an energy or a fluid.</summary>
internal static class PropertyInsertion
{
    /// <summary>The edit that writes properties behind those that are there; null where the item is not found in its text.</summary>
    public static TextEdit? In(OutlineItem item, string properties)
    {
        var text = item.Place.File.Tree.Text;
        var node = item.Place.File.Tree.Root.Declarations
            .Where(declaration => declaration.Span.Touches(item.Reference.Span.Start))
            .SelectMany(declaration => declaration.DescendantsAndSelf())
            .FirstOrDefault(one => one is EnergySyntax energy && energy.Name.Span == item.Reference.Span || one is FluidSyntax fluid && fluid.Name.Span == item.Reference.Span);
        if (node is null || node.Span.Length == 0)
        {
            return null;
        }

        var own = item.Members.Where(member => node.Span.Start < member.Node.Span.Start && member.Node.Span.End < node.Span.End).Select(member => member.Node.Span).ToList();
        if (own.Count > 0)
        {
            var last = own.MaxBy(span => span.End);
            return Insert(Behind(text, last), Gap(text, last) + properties);
        }

        return text.Content[node.Span.End - 1] == '}' ? Insert(node.Span.End - 1, $"{properties} ") : Insert(node.Span.End, $" {{ {properties} }}");

        TextEdit Insert(int position, string words) => new(item.Place.At(new TextSpan(position, 0)), words);
    }

    /// <summary>A line break with the indentation of a property that begins its line, else two blanks.</summary>
    private static string Gap(SourceText text, TextSpan property)
    {
        var line = text.LineSpan(text.LineAt(property.Start));
        var before = text.Content[line.Start..property.Start];
        return string.IsNullOrWhiteSpace(before) ? "\n" + before : "  ";
    }

    // A comment behind a property stays with it, where what is put in has a line of its own.
    private static int Behind(SourceText text, TextSpan property)
    {
        var end = text.LineSpan(text.LineAt(property.End)).End;
        return Gap(text, property).Length > 2 && text.Content.AsSpan(property.End, end - property.End).TrimStart().StartsWith("//") ? end : property.End;
    }
}
