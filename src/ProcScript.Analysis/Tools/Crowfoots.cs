using System.Collections.Immutable;
using ProcScript.Analysis.Messages;
using ProcScript.Analysis.Plans.Words;
using ProcScript.Model;
using ProcScript.Model.Catalog;
using ProcScript.Model.Machines;
using ProcScript.Model.Procedures;
using ProcScript.Model.Texts;

namespace ProcScript.Analysis.Tools;

/// <summary>
/// What goes between a torque wrench and a nut that only an open jaw reaches. A torque wrench has a square drive, and no spanner sits on that:
/// it takes a crowfoot of the same size (common practice, no source).
/// </summary>
/// <param name="All">The crowfoots that a procedure can see.</param>
internal sealed record Crowfoots(ImmutableArray<Tool> All)
{
    private static readonly ImmutableArray<string> Spanners = ["spanner", "spanners"];
    private static readonly ImmutableArray<string> Wrenches = ["wrench", "wrenches"];
    private static readonly ImmutableArray<string> OpenJaws = ["open", "open-end", "open-ended", "ring", "box-end", "combination", "flare", "line", "union", "bleed"];
    private static readonly ImmutableArray<string> Couplers = ["socket", "sockets", "bit", "bits", "insert", "adapter", "adaptor", "torque", "crow", "crow's"];

    /// <summary>Those of a procedure.</summary>
    public static Crowfoots Of(Procedure procedure, Library library) => In(procedure.Files, library);

    /// <summary>Those of some files, in ordinal order.</summary>
    public static Crowfoots In(ImmutableArray<string> files, Library library) => new(
        [.. library.Tools.Where(tool => IsCrowfoot(tool) && files.BinarySearch(tool.Declared.Path, StringComparer.Ordinal) >= 0)]);

    /// <summary>Whether a tool is one, by its title.</summary>
    public static bool IsCrowfoot(Tool tool) =>
        tool.Title.Contains("crowfoot", StringComparison.OrdinalIgnoreCase) || tool.Title.Contains("crow foot", StringComparison.OrdinalIgnoreCase)
        || tool.Title.Contains("crow's foot", StringComparison.OrdinalIgnoreCase);

    /// <summary>
    /// The spanner of these tools that turns where a torque wrench cannot, the first of several, since the others hold; null where one of the
    /// tools sits on a square drive.
    /// </summary>
    public static Tool? Spanner(IReadOnlyCollection<Tool> tools) =>
        tools.FirstOrDefault(IsSpanner) is { } spanner && !tools.Any(tool => IsCrowfoot(tool) || Says(tool, Couplers)) ? spanner : null;

    /// <summary>The tools for a joint: of its kind and its own.</summary>
    public static IEnumerable<Tool> ToolsOf(Joint joint) =>
        [.. joint.Kind.Drive is { } drive ? [drive] : ImmutableArray<Tool>.Empty, .. joint.Kind.Tools, .. joint.Tools];

    /// <summary>The crowfoot of the catalog for a spanner; null where it has none of the size.</summary>
    public Tool? For(Tool spanner) => All.FirstOrDefault(tool => tool.Size is { } size && spanner.Size is { } other
        && size.Unit.Dimension == other.Unit.Dimension && Math.Abs(size.BaseValue - other.BaseValue) < 1e-9);

    /// <summary>What the crowfoot for a spanner is called, whether the catalog has it or not.</summary>
    public string Title(Tool spanner, Wordbook book) => For(spanner) is { } tool ? ItemWords.Of(tool, book)
        : spanner.Size is { } size ? book.Say("tool.crowfoot-of", ("size", book.Print(size))) : book.Say("tool.crowfoot");

    private static bool IsSpanner(Tool tool) => Says(tool, Spanners) || (Says(tool, Wrenches) && Says(tool, OpenJaws));

    private static bool Says(Tool tool, ImmutableArray<string> words)
    {
        // In a pack that is told in another language, marks lie at the ends of a title.
        var title = LibraryTexts.Plain(tool.Title).AsSpan();
        foreach (var range in title.SplitAny(' ', ',', '(', ')', '/'))
        {
            foreach (var word in words)
            {
                if (title[range].Equals(word, StringComparison.OrdinalIgnoreCase))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
